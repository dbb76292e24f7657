import { describe, expect, it } from 'vitest'
import { cutLength, type NotionNeed, neededNotions, stillNeeded } from '../../../src/core/notions/index.ts'
import { addSize, removeSize, renameSize } from '../../../src/core/patterns/index.ts'
import { aPattern } from '../../support/pattern-builder.ts'

const WAIST: NotionNeed = {
  id: 'waist',
  kind: 'elastic',
  name: 'Waist elastic',
  width: 25,
  amount: { form: 'formula', each: 1, edge: { S: 700, M: 800 }, ratio: 0.9, extra: 20 },
  passes: { S: 940, M: 1020 },
}
const STRAPS: NotionNeed = {
  id: 'straps',
  kind: 'ribbon',
  name: 'Straps',
  width: null,
  amount: { form: 'table', each: 2, length: { S: 400, M: 420 } },
  versions: ['straps'],
}
const RINGS: NotionNeed = {
  id: 'rings',
  kind: 'ring',
  name: 'Rings',
  width: 10,
  amount: { form: 'count', count: { S: 2, M: 4 } },
}
const pattern = { notions: [WAIST, STRAPS, RINGS] }

describe('what a pattern takes of notions', () => {
  it('gives the cut lengths and counts of a version and size, for several garments', () => {
    expect(neededNotions(pattern, 'straps', 'M', 2)).toMatchObject([
      { need: WAIST, lengths: [740, 740], count: 0, unknown: false },
      { need: STRAPS, lengths: [420, 420, 420, 420] },
      { need: RINGS, lengths: [], count: 8 },
    ])
    expect(neededNotions(pattern, 'plain', 'S').map(({ need }) => need.id)).toEqual(['waist', 'rings'])
  })

  it('says when a size has no figure, rather than that nothing is needed', () => {
    expect(neededNotions(pattern, 'straps', 'XL').map(({ unknown }) => unknown)).toEqual([true, true, true])
    expect(cutLength(WAIST.amount, 'XL')).toBeNull()
    const odd: NotionNeed = { ...WAIST, amount: { form: 'count', count: { S: 1 } } }
    expect(neededNotions({ notions: [odd] }, 'plain', 'S')).toMatchObject([{ lengths: [], unknown: true }])
  })

  it('needs nothing where the figure is 0, and nothing of a pattern without notions', () => {
    const none: NotionNeed = { ...STRAPS, amount: { form: 'table', each: 2, length: { S: 0 } } }
    expect(neededNotions({ notions: [none] }, 'straps', 'S')).toMatchObject([{ lengths: [], unknown: false }])
    expect(neededNotions({}, 'plain', 'S')).toEqual([])
  })
})

describe('what is left to cut', () => {
  const needed = neededNotions(pattern, 'straps', 'M')
  const left = (taken: Parameters<typeof stillNeeded>[1]) =>
    stillNeeded(needed, taken).map(({ lengths, count }) => lengths.length + count)

  it('is less by each length and count taken for its need', () => {
    expect(left([])).toEqual([1, 2, 4])
    expect(
      left([
        { need: 'straps', amount: 420 },
        { need: 'rings', amount: 3 },
        { need: 'gone', amount: 1 },
      ]),
    ).toEqual([1, 1, 1])
    expect(left([{ need: 'rings', amount: 9 }])).toEqual([1, 2, 0])
  })

  it('is no less by a length that was cut too short, for a smaller size', () => {
    expect(left([{ need: 'waist', amount: 650 }])).toEqual([1, 2, 4])
    expect(left([{ need: 'waist', amount: 760 }])).toEqual([0, 2, 4])
  })
})

describe('sizes of a pattern', () => {
  const typed = aPattern({ notions: pattern.notions })
  const needs = (of: { notions?: readonly NotionNeed[] }, size: string) =>
    neededNotions(of, 'straps', size).map(({ lengths, count, unknown }) =>
      unknown ? null : [...lengths, count],
    )

  it('keep their notions under another name, copy them to a new size, and take them away', () => {
    const named = renameSize(typed, 'M', '12')
    expect(needs(named, '12')).toEqual(needs(typed, 'M'))
    expect(named.notions?.[0]?.passes).toEqual({ S: 940, 12: 1020 })
    expect(needs(addSize(typed, 'L'), 'L')).toEqual(needs(typed, 'M'))
    expect(needs(removeSize(typed, 'M'), 'M')).toEqual([null, null, null])
    expect(needs(removeSize(typed, 'M'), 'S')).toEqual(needs(typed, 'S'))
  })
})
