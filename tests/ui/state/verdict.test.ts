import { expect, it } from 'vitest'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { signOf } from '../../../src/ui/state/verdict.ts'

const SHIRT = { kind: 'button-shirt', traits: {} } as const

const lay = (verdict: Lay['verdict'], spare: number | null): Lay => ({
  verdict,
  spare,
  placements: [],
  reason: null,
  leftOut: [],
  elapsedMs: 0,
})

it('a lay fits for sure only when it has at least as much to spare as the tape may be off', () => {
  expect(signOf({ lay: lay('fits', 8) }, SHIRT, 8)).toBe('fits')
  expect(signOf({ lay: lay('fits', 7.9) }, SHIRT, 8)).toBe('doubt')
  expect(signOf({ lay: lay('fits', 0) }, SHIRT, 0)).toBe('fits')
})

it('a spare that is not known is none', () => {
  expect(signOf({ lay: lay('fits', null) }, SHIRT, 8)).toBe('doubt')
})

it('a search without a find is no proof', () => {
  expect(signOf({ lay: lay('not-found', null) }, SHIRT, 8)).toBe('open')
  expect(signOf({ lay: lay('cannot', null) }, SHIRT, 8)).toBe('cannot')
})

it('a garment on which several tape figures add up needs more to spare', () => {
  expect(signOf({ lay: lay('fits', 9) }, { kind: 'tank-top', traits: {} }, 8)).toBe('doubt')
})
