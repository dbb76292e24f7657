import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../../src/core/base/random.ts'
import { type CuttingProblem, cutLengths } from '../../../src/core/cutting-stock/index.ts'
import { leastScoreByTrial, scoreOf } from '../../support/cutting-brute.ts'
import { randomRuns } from '../../support/random-runs.ts'

const cut = (needed: number[], owned: number[], scrap = 50) => cutLengths({ needed, owned, scrap })

describe('lengths cut from lengths owned', () => {
  it('uses a remnant up before it cuts into a long length', () => {
    expect(cut([740], [5000, 760])).toEqual({
      from: [1],
      score: { short: 0, shortCount: 0, spoilt: 0, left: 20 },
      proved: true,
    })
  })

  it('cuts two from one length rather than spoil two', () => {
    const { from, score } = cut([300, 300], [450, 460, 1000])
    expect(from).toEqual([2, 2])
    expect(score).toMatchObject({ spoilt: 1, left: 400 })
  })

  it('keeps a long length whole when two remnants are used up', () => {
    expect(cut([300, 300], [310, 320, 1000]).score).toEqual({ short: 0, shortCount: 0, spoilt: 0, left: 30 })
  })

  it('leaves the least to buy, in total first and in number then', () => {
    expect(cut([600, 500, 400], [900])).toMatchObject({
      from: [null, 0, 0],
      score: { short: 600, shortCount: 1 },
    })
    // 400 is short either way.
    expect(cut([400, 200, 200], [400], 0).score).toEqual({ short: 400, shortCount: 1, spoilt: 0, left: 0 })
  })

  it('takes a length that fits to the last tenth, in inches too', () => {
    const inch = 25.4
    expect(cut([(20 + 1 / 16) * inch, 10 * inch], [(30 + 1 / 16) * inch], 0).score).toMatchObject({
      short: 0,
      left: 0,
    })
    expect(cut([800 * 0.9 + 20], [740]).score.short).toBe(0)
    expect(cut([740.1], [740]).score.short).toBe(740.1)
  })

  it('cuts a length only from what it may be cut from', () => {
    const plan = cutLengths({ needed: [100, 100], owned: [100, 500], mayUse: (n, o) => n !== o, scrap: 0 })
    expect(plan).toMatchObject({ from: [1, 0], proved: true })
  })

  it('has nothing to do without needs, and is all short without stock', () => {
    expect(cut([], [100])).toMatchObject({ from: [], score: { short: 0, left: 0 }, proved: true })
    expect(cut([100], [])).toMatchObject({ from: [null], score: { short: 100, shortCount: 1 }, proved: true })
  })

  it('refuses lengths that are none', () => {
    expect(() => cut([0], [100])).toThrow(RangeError)
    expect(() => cut([100], [Number.NaN])).toThrow(RangeError)
  })

  it('says so when the budget ends the search', () => {
    const problem = { needed: [7, 7, 6, 6, 5, 5, 4, 4, 3, 3], owned: [11, 11, 13, 17, 19], scrap: 1 }
    expect(cutLengths(problem).proved).toBe(true)
    expect(cutLengths(problem, 3).proved).toBe(false)
  })
})

describe('against trying everything', () => {
  const runs = randomRuns('cutting stock', 400)

  it(`scores the least there is in ${runs.count} random problems, and says that it is proved`, () => {
    const random = seededRandom(20)
    const below = (most: number) => Math.floor(random() * most)
    for (let run = 0; run < runs.count; run++) {
      const step = below(2) === 0 ? 1 : 50
      const lengths = Array.from({ length: 1 + below(4) }, () => step * (2 + below(20)))
      const needed = Array.from({ length: 1 + below(6) }, () => lengths[below(lengths.length)]!)
      const owned = Array.from({ length: below(5) }, () => step * (1 + below(45)))
      const barred = new Set(Array.from({ length: below(4) }, () => `${below(6)} ${below(4)}`))
      const problem: CuttingProblem = {
        needed,
        owned,
        scrap: [0, step, 3 * step, 10 * step][below(4)]!,
        mayUse: (n, o) => !barred.has(`${n} ${o}`),
      }
      const plan = cutLengths(problem)
      const said = JSON.stringify({ ...problem, barred: [...barred] })
      expect(plan.proved, said).toBe(true)
      expect(plan.score, said).toEqual(leastScoreByTrial(problem))
      expect(scoreOf(problem, plan.from), said).toEqual(plan.score)
      expect(
        plan.from.every((o, n) => o === null || !barred.has(`${n} ${o}`)),
        said,
      ).toBe(true)
      runs.tick({})
    }
  })
})
