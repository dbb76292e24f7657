import { describe, expect, it } from 'vitest'
import { bucketHat } from '../../demo-data/drafting/bucket-hat.ts'
import { halfCircleSkirt } from '../../demo-data/drafting/half-circle-skirt.ts'
import { leggings } from '../../demo-data/drafting/leggings.ts'
import { raglanTop } from '../../demo-data/drafting/raglan-top.ts'
import { sportsTop } from '../../demo-data/drafting/sports-top.ts'
import { edgesLength, outlineOf, stripOf } from '../support/seam-lengths.ts'

/**
 * Bodies to hold the drafts against, apart from the table they were drafted from. Women's bust ranges: EN 13402-3, from
 * memory; waist and hip of the middle of each range by its steps of 84/68/92 … 100/84/108, from memory. cm.
 */
const BUST = { XS: [74, 82], S: [82, 90], M: [90, 98], L: [98, 107], XL: [107, 119] } as const
const HIP = { XS: 86, S: 94, M: 102, L: 110, XL: 119 } as const
const WAIST = { XS: 62, S: 70, M: 78, L: 86.5, XL: 97 } as const
/** Children's chest girths by height: EN 13402-3 and common tables, from memory. */
const CHEST = { '104': 56, '116': 60, '128': 64.5, '140': 70.5 } as const

function rightmost(points: readonly { readonly at: readonly [number, number] }[]): number {
  return Math.max(...points.map(({ at }) => at[0]))
}

describe('finished girths against bodies', () => {
  it.each(Object.entries(BUST))(
    'sports top %s: stretches on to every bust of its range by 3 to 20 %%',
    (size, range) => {
      // Negative ease, common practice: 10 % in the middle of the range.
      const pattern = sportsTop()
      const girth =
        2 *
        (rightmost(outlineOf(pattern, 'front', size).points) +
          rightmost(outlineOf(pattern, 'back', size).points))
      for (const bust of range) {
        expect((bust * 10) / girth - 1).toBeGreaterThan(0.03)
        expect((bust * 10) / girth - 1).toBeLessThan(0.2)
      }
    },
  )

  it.each(Object.entries(HIP))(
    'leggings %s: stretch on to the hip by 8 to 20 %%, and the waist passes over it',
    (size, hip) => {
      const pattern = leggings()
      const [front, back] = [outlineOf(pattern, 'front', size), outlineOf(pattern, 'back', size)]
      const [f, b] = [front, back].map(({ points }) => (points[3]?.at[0] ?? 0) - (points[6]?.at[0] ?? 0)) as [
        number,
        number,
      ]
      const girth = 2 * (f + b)
      expect((hip * 10) / girth - 1).toBeGreaterThan(0.08)
      expect((hip * 10) / girth - 1).toBeLessThan(0.2)
      // Needed: 50 % across.
      const waist = 2 * (edgesLength(front, 4) + edgesLength(back, 4))
      expect(waist * 1.5).toBeGreaterThan(hip * 10)
      expect(waist).toBeLessThan(hip * 10)
    },
  )

  it.each(Object.entries(CHEST))('raglan top %s: 5 to 12 cm of ease round the chest', (size, chest) => {
    // Common practice for a knit top.
    const pattern = raglanTop()
    const girth =
      2 *
      (rightmost(outlineOf(pattern, 'front', size).points) +
        rightmost(outlineOf(pattern, 'back', size).points))
    expect(girth - chest * 10).toBeGreaterThanOrEqual(50)
    expect(girth - chest * 10).toBeLessThanOrEqual(120)
  })

  it.each([
    ['104', 51],
    ['116', 52],
    ['140', 53.5],
  ])(
    'raglan top %s: neck and band stretch over a head of %f cm by what they ask of the cloth',
    (size, head) => {
      // neckline × (1 + s) ≥ head girth, by the definition of stretch; head girths common practice.
      const pattern = raglanTop()
      const needs = (piece: string) => pattern.pieces.find(({ id }) => id === piece)?.needs.across ?? 0
      const { edge, ratio } = stripOf(pattern, 'neckband', size)
      expect(edge * ratio * (1 + needs('neckband') / 100)).toBeGreaterThanOrEqual(head * 10)
      expect(edge * (1 + needs('front') / 100)).toBeGreaterThanOrEqual(head * 10)
      expect(ratio).toBeGreaterThanOrEqual(0.85)
      expect(ratio).toBeLessThanOrEqual(0.9)
    },
  )

  it.each(Object.entries(WAIST))('half-circle skirt %s: 1 to 3 cm of ease at the waist', (size, waist) => {
    const band = 2 * stripOf(halfCircleSkirt(), 'waistband', size).edge
    expect(band - waist * 10).toBeGreaterThanOrEqual(10)
    expect(band - waist * 10).toBeLessThanOrEqual(30)
  })

  it.each(Object.entries({ S: 54, M: 56, L: 58, XL: 60 }))(
    'bucket hat %s: a head of %f cm and 0.5 to 2 cm of ease',
    (size, head) => {
      // Hats go in steps of 2 cm, common practice.
      const girth = 4 * edgesLength(outlineOf(bucketHat(), 'side', size), 0)
      expect(girth - head * 10).toBeGreaterThanOrEqual(5)
      expect(girth - head * 10).toBeLessThanOrEqual(20)
    },
  )
})
