import { expect, it } from 'vitest'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { signOf } from '../../../src/ui/state/verdict.ts'

const lay = (verdict: Lay['verdict'], spare: number | null): Lay => ({
  verdict,
  spare,
  placements: [],
  reason: null,
  leftOut: [],
  elapsedMs: 0,
})

it('a lay fits for sure only when it has at least as much to spare as the tape may be off', () => {
  expect(signOf(lay('fits', 8), 8)).toBe('fits')
  expect(signOf(lay('fits', 7.9), 8)).toBe('doubt')
  expect(signOf(lay('fits', 0), 0)).toBe('fits')
})

it('a spare that is not known is none', () => {
  expect(signOf(lay('fits', null), 8)).toBe('doubt')
})

it('a search without a find is no proof', () => {
  expect(signOf(lay('not-found', null), 8)).toBe('open')
  expect(signOf(lay('cannot', null), 8)).toBe('cannot')
})
