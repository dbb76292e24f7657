import { describe, expect, it } from 'vitest'
import {
  asksOf,
  type ClothFacts,
  inOrder,
  NO_FILTER,
  passes,
  type StashFilter,
} from '../../../src/core/stash/stash-filter.ts'
import { testGarment } from '../../support/storage.ts'

const facts: ClothFacts = {
  isReserved: false,
  freeArea: () => 200_000,
  hasClear: ({ width, height }) => width <= 300 && height <= 400,
}
const pass = (filter: Partial<StashFilter>, change = {}, known: Partial<ClothFacts> = {}) =>
  passes(testGarment(change), { ...facts, ...known }, { ...NO_FILTER, ...filter })

describe('a filter of the stash', () => {
  it('that asks nothing shows all that is on the shelf', () => {
    expect(pass({})).toBe(true)
    expect(pass({}, { usedUp: true })).toBe(false)
    expect(asksOf(NO_FILTER)).toBe(0)
  })

  it('by stretch asks both ways, and does not pass what was never measured', () => {
    // The test garment stretches 40 across, 20 along.
    expect(pass({ stretch: { across: 40, along: 20 } })).toBe(true)
    expect(pass({ stretch: { across: 40, along: 21 } })).toBe(false)
    const { cloth } = testGarment()
    expect(pass({ stretch: { across: 1, along: 0 } }, { cloth: { ...cloth, stretch: null } })).toBe(false)
  })

  it('by what the cloth is, whether it is washed and where it lies', () => {
    expect(pass({ structure: 'knit', surface: 'plain', washed: true })).toBe(true)
    expect(pass({ structure: 'woven' })).toBe(false)
    expect(pass({ surface: 'one-way' })).toBe(false)
    expect(pass({ washed: false })).toBe(false)
    expect(pass({ place: 'box 1' }, { place: ' box 1' })).toBe(true)
    expect(pass({ place: 'box 1' }, { place: 'box 11' })).toBe(false)
  })

  it('by a colour and by a fibre, whole words both', () => {
    const { cloth } = testGarment()
    const tee = { cloth: { ...cloth, colour: 'Pale blue', fibres: '95 % cotton, 5 % elastane' } }
    expect(pass({ colour: 'blue' }, tee)).toBe(true)
    expect(pass({ colour: 'blu' }, tee)).toBe(false)
    expect(pass({ colour: 'blue' }, { cloth: { ...cloth, colour: '' } })).toBe(false)
    expect(pass({ fibre: 'elastane' }, tee)).toBe(true)
    expect(pass({ fibre: 'wool' }, tee)).toBe(false)
    expect(asksOf({ ...NO_FILTER, colour: 'blue', fibre: 'cotton' })).toBe(2)
  })

  it('by state', () => {
    expect(pass({ state: 'free' })).toBe(true)
    expect(pass({ state: 'reserved' })).toBe(false)
    expect(pass({ state: 'reserved' }, {}, { isReserved: true })).toBe(true)
    expect(pass({ state: 'used-up' })).toBe(false)
    expect(pass({ state: 'used-up' }, { usedUp: true })).toBe(true)
  })

  it('by free cloth and by a clear rectangle', () => {
    expect(pass({ area: 200_000 })).toBe(true)
    expect(pass({ area: 200_001 })).toBe(false)
    expect(pass({ clear: { width: 300, height: 400 } })).toBe(true)
    expect(pass({ clear: { width: 400, height: 300 } })).toBe(false)
  })

  it('works nothing out that was not asked', () => {
    const dear = {
      freeArea: () => {
        throw new Error('asked')
      },
    }
    expect(pass({ structure: 'knit' }, {}, dear)).toBe(true)
    expect(pass({ structure: 'woven', area: 1 }, {}, dear)).toBe(false)
  })
})

describe('the order of the stash', () => {
  const { cloth } = testGarment()
  const shelf = [
    testGarment({ id: 'a', name: 'tea towel', price: null, place: '' }),
    testGarment({ id: 'b', name: 'Apron', price: 1, place: 'shelf', cloth: { ...cloth, stretch: null } }),
    testGarment({ id: 'c', name: 'Shirt', price: 5, place: 'box' }),
  ]
  const ids = (...order: Parameters<typeof inOrder>) => inOrder(...order).map(({ id }) => id)
  const area = ({ id }: { id: string }) => ({ a: 3, b: 1, c: 2 })[id] ?? 0

  it('puts what is unknown last', () => {
    expect(ids(shelf, 'price', area)).toEqual(['b', 'c', 'a'])
    expect(ids(shelf, 'place', area)).toEqual(['c', 'b', 'a'])
    expect(ids(shelf, 'stretch', area)).toEqual(['a', 'c', 'b'])
  })

  it('goes by the alphabet whatever the case, and by the largest area', () => {
    expect(ids(shelf, 'name', area)).toEqual(['b', 'c', 'a'])
    expect(ids(shelf, 'area', area)).toEqual(['a', 'c', 'b'])
    expect(ids(shelf, 'newest', area)).toEqual(['a', 'b', 'c'])
  })
})
