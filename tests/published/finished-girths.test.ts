import { describe, expect, it } from 'vitest'
import { babyBib } from '../../demo-data/drafting/bib.ts'
import { boxerShorts } from '../../demo-data/drafting/boxer-shorts.ts'
import { bucketHat } from '../../demo-data/drafting/bucket-hat.ts'
import { halfCircleSkirt } from '../../demo-data/drafting/half-circle-skirt.ts'
import { leggings } from '../../demo-data/drafting/leggings.ts'
import { pouch } from '../../demo-data/drafting/pouch.ts'
import { raglanTop } from '../../demo-data/drafting/raglan-top.ts'
import { sportsTop } from '../../demo-data/drafting/sports-top.ts'
import { ringStretch } from '../../src/core/notions/cautions.ts'
import { stripFlat } from '../../src/core/patterns/strip.ts'
import { seamRing } from '../../src/core/patterns/unfold.ts'
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

/**
 * Crotch length, waist to waist between the legs, of a woven trouser block for these hips, cm: 692 mm at a hip of 94 as drafted
 * from Aldrich's tables (from memory), 4.2 mm more for each cm of hip: her rise grows by 1.4 mm in front and at the
 * back, and the depth of the seat by 1.4.
 */
const BLOCK_CROTCH = { XS: 65.8, S: 69.2, M: 72.6, L: 76.1, XL: 80.3 } as const
/** Round both shoulders: 12 cm more than the bust, common practice. */
const SHOULDERS = { XS: 90, S: 98, M: 106, L: 114.5, XL: 125 } as const

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

  it.each(Object.entries(BLOCK_CROTCH))(
    'leggings %s: the crotch stretches to the %f cm of a woven block by half of what the cloth must give along',
    (size, block) => {
      // Wanted: half of the cloth's stretch at most, for comfort, and enough not to sag (common practice).
      const pattern = leggings()
      const [front, back] = [outlineOf(pattern, 'front', size), outlineOf(pattern, 'back', size)]
      const crotch = edgesLength(front, 5, 6) + edgesLength(back, 5, 6)
      const along = pattern.pieces[0]?.needs.along ?? 0
      expect(100 * ((block * 10) / crotch - 1)).toBeLessThan(along / 2 + 0.5)
      expect(100 * ((block * 10) / crotch - 1)).toBeGreaterThan(10)
    },
  )

  it.each(Object.entries(BLOCK_CROTCH))(
    'boxer shorts %s: sit 3 cm below the waist, with 2 to 4 cm of room over the %f cm of a woven block',
    (size, block) => {
      const leg = outlineOf(boxerShorts(), 'leg', size)
      const crotch = edgesLength(leg, 2, 3) + edgesLength(leg, 6, 7)
      const room = crotch + 2 * 30 - block * 10
      expect(room).toBeGreaterThanOrEqual(20)
      expect(room).toBeLessThanOrEqual(40)
    },
  )

  it.each(Object.entries(SHOULDERS))(
    'sports top %s: hem and elastic pass over shoulders of %f cm',
    (size, round) => {
      // Girth × (1 + stretch) ≥ what passes, by the definition of stretch.
      const pattern = sportsTop()
      const [front, back] = [outlineOf(pattern, 'front', size), outlineOf(pattern, 'back', size)]
      const hem = 2 * (edgesLength(front, 0) + edgesLength(back, 0))
      const across = pattern.pieces.find(({ id }) => id === 'front')?.needs.across ?? 0
      expect(hem * (1 + across / 100)).toBeGreaterThanOrEqual(round * 10)
      const band = pattern.pieces.find(({ id }) => id === 'band')?.needs.across ?? 0
      expect(2 * stripOf(pattern, 'band', size).edge * (1 + band / 100)).toBeGreaterThanOrEqual(round * 10)
      const elastic = pattern.notions?.find(({ id }) => id === 'band-elastic')
      expect(elastic?.passes?.[size]).toBeGreaterThanOrEqual(round * 10)
      const stretch = elastic && ringStretch(elastic, size)
      expect(stretch?.doubtful).toBe(false)
    },
  )

  it.each(Object.entries({ '56': 23, '68': 24.5, '80': 26, '92': 27 }))(
    'bib %s: closed, its neck is 2 to 4 cm wider than a neck of %f cm',
    (size, neck) => {
      // Neck girths of babies, common practice. The tabs lie over one another by 36 mm.
      const edge = 2 * edgesLength(outlineOf(babyBib(), 'bib', size), 3, 4)
      expect(edge - 36 - neck * 10).toBeGreaterThanOrEqual(20)
      expect(edge - 36 - neck * 10).toBeLessThanOrEqual(40)
    },
  )

  it.each(pouch().sizes)(
    'pouch %s: zip and the tabs at both its ends are as long as the bag is wide',
    (size) => {
      const pattern = pouch()
      const width = 2 * rightmost(outlineOf(pattern, 'outer', size).points)
      const zip = pattern.notions?.find(({ id }) => id === `zip-${size}`)
      expect(zip?.width).toBe(width - 2 * stripOf(pattern, 'zip-tab', size).height)
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
    const pattern = halfCircleSkirt()
    const [front, back] = [stripOf(pattern, 'waistband', size), stripOf(pattern, 'waistband-back', size)]
    expect(front.edge + back.edge - waist * 10).toBeGreaterThanOrEqual(10)
    expect(front.edge + back.edge - waist * 10).toBeLessThanOrEqual(30)
    // For a hook and bar, common practice 2.5 to 4 cm.
    const cut = stripFlat(front).width + stripFlat(back).width
    expect(cut - front.edge - back.edge).toBeGreaterThanOrEqual(25)
    expect(cut - front.edge - back.edge).toBeLessThanOrEqual(40)
  })

  it.each(Object.keys(WAIST))(
    'half-circle skirt %s: 15 mm at both edges of the zip, and nowhere else',
    (size) => {
      // Common practice: 15 mm (5/8 in) for a zip in a woven skirt.
      const pattern = halfCircleSkirt()
      for (const { pieces } of pattern.versions) {
        const gores = pattern.pieces.filter(({ id }) => pieces.includes(id) && id.startsWith('gore'))
        expect(gores.reduce((sum, { copies }) => sum + copies, 0)).toBe(6)
        const edges = gores.flatMap(({ id, copies }) =>
          seamRing(outlineOf(pattern, id, size)).flatMap((point) =>
            Array.from({ length: copies }, () => point),
          ),
        )
        const zipped = edges.filter(({ allowance }) => allowance === 15)
        expect(zipped.map(({ fixed }) => fixed)).toEqual([true, true])
        expect(edges.filter(({ fixed }) => fixed)).toHaveLength(2)
      }
    },
  )

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
