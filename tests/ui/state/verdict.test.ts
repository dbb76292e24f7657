import { expect, it } from 'vitest'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { canSearchOnFrom, type LiveVerdict, signOf } from '../../../src/ui/state/verdict.ts'
import { layProblem } from '../../support/lay-problems.ts'

const SHIRT = { kind: 'button-shirt', traits: {} } as const

const lay = (
  verdict: Lay['verdict'],
  spare: number | null,
  spareIs: Lay['spareIs'] = verdict === 'fits' ? 'found' : null,
): Lay => ({
  verdict,
  spare,
  spareIs,
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

it('doubt is only shown where it was found', () => {
  expect(signOf({ lay: lay('fits', 7.9, 'at-least') }, SHIRT, 8)).toBe('fits')
  expect(signOf({ lay: lay('fits', null, 'at-least') }, SHIRT, 8)).toBe('fits')
})

it('a longer search may better what is undecided, or what is not known to have room enough', () => {
  const shown = (of: Lay, looking = false): LiveVerdict => ({
    state: 'answered',
    sign: signOf({ lay: of }, SHIRT, 8),
    answer: { problem: layProblem([], []), lay: of, heads: 'up' },
    roomAsked: 8,
    looking,
    odd: [],
    byUsual: false,
    ifStretch: null,
  })
  expect(canSearchOnFrom(shown(lay('not-found', null)))).toBe(true)
  expect(canSearchOnFrom(shown(lay('cannot', null)))).toBe(false)
  expect(canSearchOnFrom(shown(lay('fits', 3, 'at-least')))).toBe(true)
  expect(canSearchOnFrom(shown(lay('fits', null, 'at-least')))).toBe(true)
  expect(canSearchOnFrom(shown(lay('fits', 3, 'at-least'), true))).toBe(false)
  expect(canSearchOnFrom(shown(lay('fits', 9, 'at-least')))).toBe(false)
  expect(canSearchOnFrom(shown(lay('fits', 3)))).toBe(false)
})

it('a search without a find is no proof', () => {
  expect(signOf({ lay: lay('not-found', null) }, SHIRT, 8)).toBe('open')
  expect(signOf({ lay: lay('cannot', null) }, SHIRT, 8)).toBe('cannot')
})

it('a garment on which several tape figures add up needs more to spare', () => {
  expect(signOf({ lay: lay('fits', 9) }, { kind: 'tank-top', traits: {} }, 8)).toBe('doubt')
})
