import { describe, expect, it } from 'vitest'
import { savings, type UsedDonor } from '../../../../src/core/planning/savings/savings.ts'

const donor = (change: Partial<UsedDonor> = {}): UsedDonor => ({
  price: 6,
  area: 300_000,
  areaOfAll: 300_000,
  gramsPerSquareMetre: 200,
  ...change,
})

describe('what a project saves', () => {
  it('is the price of new cloth beside that of the donors', () => {
    // 1.2 m and 0.3 m at 10 a metre.
    expect(savings([donor()], [1200, 300], 10)).toEqual({
      spent: 6,
      newCloth: 15,
      area: 300_000,
      grams: 60,
      gramsPartly: false,
    })
  })

  it('shares the price of a donor by what each project cuts from it, so that all shares make the price', () => {
    const [mine, theirs] = [100_000, 500_000]
    const share = (area: number) => savings([donor({ area, areaOfAll: mine + theirs })], [], null).spent
    expect(share(mine)).toBeCloseTo(1)
    expect((share(mine) ?? 0) + (share(theirs) ?? 0)).toBeCloseTo(6)
  })

  it('keeps quiet about money where a price is unknown', () => {
    expect(savings([donor(), donor({ price: null })], [1000], 10).spent).toBeNull()
    expect(savings([donor()], [1000, null], 10).newCloth).toBeNull()
    expect(savings([donor()], [1000], null).newCloth).toBeNull()
  })

  it('counts a donor that was free', () => {
    expect(savings([donor({ price: 0 })], [], null).spent).toBe(0)
  })

  it('says when the weight leaves out a donor', () => {
    const { grams, gramsPartly } = savings([donor(), donor({ gramsPerSquareMetre: null })], [], null)
    expect([grams, gramsPartly]).toEqual([60, true])
    expect(savings([donor({ gramsPerSquareMetre: null })], [], null).grams).toBeNull()
  })
})
