import { describe, expect, it } from 'vitest'
import { neededStretch } from '../../src/core/cloth/stretch.ts'
import { polygonArea, polygonBox, polygonPerimeter } from '../../src/core/geometry/polygon.ts'
import { elasticCasing } from '../../src/core/patterns/casing.ts'
import { circleSkirtRadius } from '../../src/core/patterns/circle-skirt.ts'
import { cutOutline } from '../../src/core/patterns/cut-outline.ts'
import { seamLine } from '../../src/core/patterns/seam-line.ts'
import { SEAM_TYPES, seamAllowance } from '../../src/core/patterns/seams.ts'
import { stripCut, stripFlat, stripsToJoin } from '../../src/core/patterns/strip.ts'

describe('cut sizes', () => {
  it('finished 400 × 300 with 15 mm all round is cut 430 × 330', () => {
    // By definition: cut size = finished size + the sum of the two allowances across it.
    const { minX, minY, maxX, maxY } = polygonBox(
      cutOutline({ form: 'box', width: 400, height: 300, allowance: 15 }),
    )
    expect([maxX - minX, maxY - minY]).toEqual([430, 330])
  })

  it('a skirt panel of waist 360, hem 520, length 600 has 264,000 mm²', () => {
    // Trapezium: height × half the sum of the parallel sides.
    expect(
      polygonArea(seamLine({ form: 'trapezoid', top: 360, bottom: 520, height: 600, allowance: 0 })),
    ).toBe(264_000)
  })

  it('a disc of 300 mm with 10 mm has the area of one of 320 mm, and half of it is half as much above its flat edge', () => {
    // π r², Archimedes; cut from outside, hence never less.
    const disc = polygonArea(cutOutline({ form: 'circle', diameter: 300, allowance: 10 }))
    expect(disc).toBeGreaterThanOrEqual(Math.PI * 160 ** 2)
    expect(disc).toBeLessThanOrEqual(Math.PI * 160.2 ** 2)
    const half = polygonArea(cutOutline({ form: 'half-moon', width: 300, height: 150, allowance: 10 }))
    expect(half - 320 * 10).toBeGreaterThanOrEqual((Math.PI * 160 ** 2) / 2)
    expect(half - 320 * 10).toBeLessThanOrEqual((Math.PI * 160.2 ** 2) / 2)
  })

  it('a half ellipse 300 wide and 100 high has π a b / 2', () => {
    const area = polygonArea(seamLine({ form: 'half-moon', width: 300, height: 100, allowance: 0 }))
    expect(area).toBeGreaterThanOrEqual((Math.PI * 150 * 100) / 2)
    expect(area).toBeLessThan((Math.PI * 150 * 100) / 2 + 0.2 * 500)
  })
})

describe('seams', () => {
  it('a French seam in inches takes 3/8 + 1/4 = 5/8 in', () => {
    // Oklahoma Cooperative Extension Service, 4-H Fabrics & Fashions Construction Cards, Intermediate.
    expect(seamAllowance('french-inch')).toBeCloseTo((5 / 8) * 25.4, 9)
    expect(seamAllowance('woven-inch')).toBeCloseTo(seamAllowance('french-inch'), 9)
  })

  it('a French seam in metric takes 9 + 6 = 15 mm, and the first pass can be trimmed to less than the second', () => {
    // Trimmed to 1/8 in: Utah State University Extension, "Technique: French Seam".
    const french = SEAM_TYPES.find(({ id }) => id === 'french')
    expect(seamAllowance('french')).toBe(15)
    expect(french?.parts[0]).toBeGreaterThan(25.4 / 8)
  })

  it('5/8 in is 0.875 mm wider than 15 mm: 7 mm round a garment of four seams', () => {
    // 1 in = 25.4 mm, international yard and pound agreement of 1959.
    const wider = seamAllowance('woven-inch') - seamAllowance('woven')
    expect(wider).toBeCloseTo(0.875, 9)
    expect(wider * 4 * 2).toBeCloseTo(7, 9)
  })

  it('common practice: overlocked knit 6, lining 10, craft 12, woven 15, narrow hem 2 × 6, woven hem 25 + 6 mm', () => {
    const ids = ['overlocked', 'lining', 'craft', 'woven', 'flat-felled', 'narrow-hem', 'woven-hem'] as const
    expect(ids.map(seamAllowance)).toEqual([6, 10, 12, 15, 15, 12, 31])
  })

  it('common practice: a casing for 25 mm elastic takes 25 + 3 + 6 = 34 mm, with a 10 mm header 44', () => {
    expect(elasticCasing(25)).toBe(34)
    expect(elasticCasing(25, 3, 6, 10)).toBe(44)
    // Without a turn-under, 1 in elastic and 1/8 in of room: 1 1/8 in = 28.575 mm.
    expect(elasticCasing(25.4, 25.4 / 8, 0)).toBeCloseTo(28.575, 9)
  })
})

describe('strips', () => {
  const strip = { form: 'strip', height: 100, folded: false, endAllowance: 10, sideAllowance: 10 } as const

  it('a 120 cm edge gathered at 2 takes 240 cm flat', () => {
    // Two to three times the edge: extension technique sheet "Straight Ruffle".
    expect(stripFlat({ ...strip, edge: 1200, ratio: 2 }).width).toBe(2400)
  })

  it('a 50 cm neck with a band of 85 % takes 42.5 cm and two end allowances', () => {
    // Common practice: jersey band 85 to 90 % of the neck seam.
    expect(stripCut({ ...strip, edge: 500, ratio: 0.85, endAllowance: 6 }).width).toBe(437)
  })

  it('flat 240 cm from strips of 70 cm with 1 cm allowances takes four', () => {
    // 4 × 70 − 2 × 3 = 274 ≥ 242; 3 × 70 − 2 × 2 = 206 is short.
    expect(stripsToJoin(2400, 700, 10)).toBe(4)
    expect(stripsToJoin(680, 700, 10)).toBe(1)
    expect(stripsToJoin(681, 700, 10)).toBe(2)
    expect(stripsToJoin(100, 20, 10)).toBe(Number.POSITIVE_INFINITY)
  })

  it('tiers from a 72 cm waist at 1.5 are 108, 162 and 243 cm', () => {
    const tiers = [720, 1080, 1620].map((edge) => stripFlat({ ...strip, edge, ratio: 1.5 }).width)
    expect(tiers).toEqual([1080, 1620, 2430])
  })
})

describe('girths', () => {
  it('body 90 cm in a garment of 81 cm needs 11.1 %, not 10 %', () => {
    // Stretch by its definition, 100 (stretched − relaxed) / relaxed.
    expect(neededStretch(900, 810)).toBeCloseTo(11.111, 3)
    expect(neededStretch(900, 750)).toBeCloseTo(20, 9)
    expect(neededStretch(900, 950)).toBe(0)
  })

  it.each([
    [1, 114.59],
    [0.75, 152.79],
    [0.5, 229.18],
    [0.25, 458.37],
  ])('a waist of 72 cm on %f of a circle has its radius from W / (2 π f)', (share, radius) => {
    // Girth of a circle, 2 π r.
    expect(circleSkirtRadius(720, share)).toBeCloseTo(radius, 2)
  })

  it('a half-circle skirt of waist 72 and length 60 cm has a hem of 260.5 cm', () => {
    // π (r + length): 22.918 + 60 cm.
    const radius = circleSkirtRadius(720, 0.5) + 600
    expect(Math.PI * radius).toBeCloseTo(2604.96, 1)
    const hem = seamLine({ form: 'half-moon', width: 2 * radius, height: radius, allowance: 0 })
    expect(polygonPerimeter(hem) - 2 * radius).toBeCloseTo(2604.96, 0)
  })
})
