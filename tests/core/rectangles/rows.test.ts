import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../../src/core/base/random.ts'
import { needOfStrip, planRows, type StripNeed, tierNeeds } from '../../../src/core/rectangles/index.ts'

const strip = (flat: number, height = 100, copies = 1): StripNeed => ({
  name: 'Ruffle',
  flat,
  height,
  endAllowance: 10,
  copies,
})

describe('strips from a width of cloth', () => {
  it('are whole rows and one that is no longer than it must be', () => {
    const plan = planRows([strip(2400)], { row: 700, depth: 400 })
    // 3 × 700 + 380 − 3 joins of 20 = 2420 = 2400 + 2 × 10.
    expect(plan?.strips).toEqual([[700, 700, 700, 380]])
    expect(plan).toMatchObject({ used: 400, fits: true, proved: true })
    expect(planRows([strip(2400)], { row: 700, depth: 399 })?.fits).toBe(false)
  })

  it('share rows of one height', () => {
    const plan = planRows([strip(280, 50, 5)], { row: 1000, depth: 100 })
    expect(plan?.rows.map(({ strips }) => strips.length)).toEqual([3, 2])
    expect(plan?.used).toBe(100)
  })

  it('do not share rows of another height', () => {
    const plan = planRows([strip(280, 50), strip(280, 60)], { row: 1000, depth: 110 })
    expect(plan?.rows.map(({ height }) => height)).toEqual([60, 50])
    expect(plan?.fits).toBe(true)
  })

  it('lose both long edges when torn', () => {
    expect(planRows([strip(2400)], { row: 700, depth: 440 }, 5)).toMatchObject({ used: 440, fits: true })
  })

  it('cannot come from cloth that is all allowance', () => {
    expect(planRows([strip(100)], { row: 20, depth: 5000 })).toBeNull()
  })

  it('reach, with none to spare, and fill no row twice, whatever the figures', () => {
    const random = seededRandom(7)
    for (let run = 0; run < 300; run++) {
      const row = 200 + Math.floor(random() * 1300)
      const needs = Array.from({ length: 1 + Math.floor(random() * 3) }, () => ({
        ...strip(
          50 + Math.floor(random() * 4000),
          60 + 20 * Math.floor(random() * 3),
          1 + Math.floor(random() * 3),
        ),
        endAllowance: Math.floor(random() * 20),
      }))
      const plan = planRows(needs, { row, depth: 1e5 })
      needs.forEach(({ flat, endAllowance, copies }, k) => {
        const strips = plan?.strips[k] ?? []
        const reach = strips.reduce((sum, length) => sum + length, 0) - 2 * endAllowance * (strips.length - 1)
        expect(reach).toBeCloseTo(flat + 2 * endAllowance, 6)
        expect((strips.length - 1) * (row - 2 * endAllowance)).toBeLessThan(flat)
        const laid = plan?.rows.flatMap((each) => each.strips.filter(({ need }) => need === k)) ?? []
        expect(laid.map(({ length }) => length).sort((a, b) => b - a)).toEqual(
          Array.from({ length: copies }, () => strips)
            .flat()
            .sort((a, b) => b - a),
        )
      })
      for (const { strips } of plan?.rows ?? []) {
        expect(strips.reduce((sum, { length }) => sum + length, 0)).toBeLessThanOrEqual(row + 1e-6)
      }
    }
  })
})

describe('rectangles by formula', () => {
  it('a tier is gathered to the flat length of the one above, with a hem on the last', () => {
    const tiers = tierNeeds(
      { edge: 720, ratio: 1.5, heights: [200, 250], seam: 10, hem: 25 },
      (k) => `Tier ${k}`,
    )
    expect(tiers).toMatchObject([
      { name: 'Tier 1', flat: 1080, height: 220 },
      { name: 'Tier 2', flat: 1620, height: 285 },
    ])
  })

  it('a folded tie is twice as high, with its allowances', () => {
    const tie = {
      form: 'strip',
      edge: 600,
      ratio: 1,
      height: 20,
      folded: true,
      endAllowance: 8,
      sideAllowance: 6,
    } as const
    expect(needOfStrip('Tie', tie, 2)).toEqual({
      name: 'Tie',
      flat: 600,
      endAllowance: 8,
      height: 52,
      copies: 2,
    })
  })
})
