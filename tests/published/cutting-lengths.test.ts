import { describe, expect, it } from 'vitest'
import { cutLengths } from '../../src/core/cutting-stock/index.ts'
import { cutLength, type NotionNeed, neededNotions, ringStretch } from '../../src/core/notions/index.ts'
import { planRows, type StripNeed, tierNeeds } from '../../src/core/rectangles/index.ts'

/** `count` stock lengths that are all alike. */
const alike = (count: number, length: number): number[] => Array(count).fill(length)

describe('elastic, ribbon and cord', () => {
  const cut = (edge: number, ratio: number, extra: number) =>
    cutLength({ form: 'formula', each: 1, edge: { M: edge }, ratio, extra }, 'M')

  it('common practice: a waist of 80 cm at 0.90 with 2 cm of overlap takes 74.0 cm', () => {
    // Firm woven elastic 0.90 to 0.95 of the body, overlap 12 to 25 mm.
    expect(cut(800, 0.9, 20)).toBeCloseTo(740, 9)
  })

  it('common practice: trim round a loop of 90 cm with 1.5 cm to join takes 91.5 cm', () => {
    expect(cut(900, 1, 15)).toBe(915)
  })

  it('common practice: the cord of a grown-up’s waist of 70 cm takes 120 to 130 cm, 50 to 60 of them to tie', () => {
    expect([cut(700, 1, 500), cut(700, 1, 600)]).toEqual([1200, 1300])
  })

  it('an elastic of 74 cm less 2 of overlap must stretch by 41.7 % to pass hips of 102 cm', () => {
    // elastic × (1 + stretch) ≥ hips, by the definition of stretch: 102 / 72 − 1.
    const waist: NotionNeed = {
      id: 'waist',
      kind: 'elastic',
      name: 'Waist',
      width: 25,
      amount: { form: 'formula', each: 1, edge: { M: 800 }, ratio: 0.9, extra: 20 },
      passes: { M: 1020 },
    }
    expect(neededNotions({ notions: [waist] }, 'any', 'M')[0]?.lengths[0]).toBeCloseTo(740, 9)
    expect(ringStretch(waist, 'M')?.stretch).toBeCloseTo(41.667, 3)
  })
})

describe('ruffles and tiers', () => {
  const ruffle: StripNeed = { name: 'Ruffle', flat: 2400, endAllowance: 10, height: 100, copies: 1 }

  it('a 120 cm edge gathered at 2, from strips of 70 cm with 1 cm allowances, takes four', () => {
    // Two to three times the edge: extension technique sheet "Straight Ruffle". 4 × 70 − 6 = 274 ≥ 242, 3 × 70 − 4 = 206.
    expect(planRows([ruffle], { row: 700, depth: 1000 })?.strips[0]).toHaveLength(4)
  })

  it.each([
    [1.5, [1080, 1620, 2430]],
    [2, [1440, 2880, 5760]],
  ])(
    'tiers from a 72 cm waist at %f are as long as the ratio says, and as high as the skirt',
    (ratio, flats) => {
      // By definition: flat = finished × ratio, tier after tier; heights sum to the length, plus 2 allowances each.
      const tiers = tierNeeds({ edge: 720, ratio, heights: [200, 200, 200], seam: 10, hem: 10 }, String)
      expect(tiers.map(({ flat }) => flat)).toEqual(flats)
      expect(tiers.reduce((sum, { height }) => sum + height, 0)).toBe(600 + 3 * 2 * 10)
    },
  )
})

describe('one-dimensional cutting stock', () => {
  it('a set that first fit decreasing lays into four bins of 61 takes three', () => {
    // Example of first fit decreasing taking more bins when they are larger, from the literature on MULTIFIT
    // (Coffman, Garey and Johnson 1978), from memory.
    const needed = [44, 24, 24, 22, 21, 17, 8, 8, 6, 6]
    expect([60, 61].map((bin) => firstFitDecreasing(needed, bin))).toEqual([3, 4])
    for (const bin of [60, 61]) {
      const plan = cutLengths({ needed, owned: alike(4, bin), scrap: Number.POSITIVE_INFINITY })
      expect(plan).toMatchObject({ score: { short: 0, left: 3 * bin - 180 }, proved: true })
    }
  })

  it('219 rolls of 13 widths come from 73 paper rolls of 5600 mm, and from no fewer', () => {
    // Encyclopaedia article "Cutting stock problem", its worked example: 73 master rolls, 0.401 % lost (from memory).
    const demand = [
      [1380, 22],
      [1520, 25],
      [1560, 12],
      [1710, 14],
      [1820, 18],
      [1880, 18],
      [1930, 20],
      [2000, 10],
      [2050, 12],
      [2100, 14],
      [2140, 16],
      [2150, 18],
      [2200, 20],
    ] as const
    const needed = demand.flatMap(([width, count]) => alike(count, width))
    const total = needed.reduce((sum, width) => sum + width, 0)
    expect(total).toBeGreaterThan(72 * 5600)
    const { score, proved, from } = cutLengths({
      needed,
      owned: alike(73, 5600),
      scrap: Number.POSITIVE_INFINITY,
    })
    expect({ ...score, proved }).toEqual({
      short: 0,
      shortCount: 0,
      spoilt: 0,
      left: 73 * 5600 - total,
      proved: true,
    })
    expect(score.left / (73 * 5600)).toBeCloseTo(0.00401, 5)
    for (let roll = 0; roll < 73; roll++) {
      const used = needed.reduce((sum, width, n) => (from[n] === roll ? sum + width : sum), 0)
      expect(used).toBeLessThanOrEqual(5600)
    }
  })

  it('25 boards of 3 ft, 20 of 5 ft and 15 of 9 ft take 19 boards of 17 ft', () => {
    // Problem data: Winston, Operations Research, "Using column generation to solve large-scale LPs" (from memory).
    // 310 ft / 17 ft = 18.2, so 18 are too few; 19 are enough.
    const needed = [...alike(15, 9), ...alike(20, 5), ...alike(25, 3)]
    const plan = cutLengths({ needed, owned: alike(25, 17), scrap: Number.POSITIVE_INFINITY })
    expect(plan).toMatchObject({ score: { short: 0, left: 19 * 17 - 310 }, proved: true })
    expect(new Set(plan.from).size).toBe(19)
  })
})

/** How many bins the rule takes; `needed` is the largest first. */
function firstFitDecreasing(needed: readonly number[], bin: number): number {
  const bins: number[] = []
  for (const length of needed) {
    const first = bins.findIndex((room) => room >= length)
    if (first < 0) bins.push(bin - length)
    else bins[first] = (bins[first] ?? 0) - length
  }
  return bins.length
}
