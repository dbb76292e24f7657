import { describe, expect, it } from 'vitest'
import { boxerShorts } from '../../demo-data/drafting/boxer-shorts.ts'
import { bucketHat } from '../../demo-data/drafting/bucket-hat.ts'
import { halfCircleSkirt } from '../../demo-data/drafting/half-circle-skirt.ts'
import { leggings } from '../../demo-data/drafting/leggings.ts'
import { pouch } from '../../demo-data/drafting/pouch.ts'
import { raglanTop } from '../../demo-data/drafting/raglan-top.ts'
import { sportsTop } from '../../demo-data/drafting/sports-top.ts'
import type { Pattern } from '../../src/core/patterns/pattern.ts'
import { edgesLength, notchesAlong, outlineOf, stripOf } from '../support/seam-lengths.ts'

/** Edges sewn together may differ by this much in length, mm; less than a needle's width of ease over the seam. */
const EQUAL = 0.5

function expectEqual(one: number, other: number): void {
  expect(Math.abs(one - other)).toBeLessThan(EQUAL)
}

/** One side of a seam: a piece, its edges in the order they are sewn, and whether each is run as drawn. */
type Walk = readonly [piece: string, edges: readonly number[], forward: boolean]

/** Walking both sides of a seam from one end, the same notches are passed at the same distances. */
function expectMeeting(pattern: Pattern, size: string, one: Walk, other: Walk): void {
  const [first, second] = [one, other].map(([piece, edges, forward]) =>
    notchesAlong(outlineOf(pattern, piece, size), edges, forward),
  ) as [ReturnType<typeof notchesAlong>, ReturnType<typeof notchesAlong>]
  expect(first.length).toBeGreaterThan(0)
  expect(second.map(({ count }) => count)).toEqual(first.map(({ count }) => count))
  for (const [k, { from }] of first.entries()) expectEqual(second[k]?.from ?? 0, from)
}

/** Edges by the number of the point they leave, in the order that the draft goes round the piece. */
const RAGLAN = {
  side: 1,
  armhole: 2,
  neck: 3,
  sleeve: { under: 1, back: 2, top: 3, front: 4, otherUnder: 5 },
}

describe.each(raglanTop().sizes)('raglan top %s: what is sewn together is of one length', (size) => {
  const pattern = raglanTop()
  const [front, back] = [outlineOf(pattern, 'front', size), outlineOf(pattern, 'back', size)]

  it.each(['sleeve-short', 'sleeve-long'])('%s and body, along the raglan line', (piece) => {
    const sleeve = outlineOf(pattern, piece, size)
    expectEqual(edgesLength(sleeve, RAGLAN.sleeve.front), edgesLength(front, RAGLAN.armhole))
    expectEqual(edgesLength(sleeve, RAGLAN.sleeve.back), edgesLength(back, RAGLAN.armhole))
    expectEqual(edgesLength(sleeve, RAGLAN.sleeve.under), edgesLength(sleeve, RAGLAN.sleeve.otherUnder))
  })

  it('side seams', () => {
    expectEqual(edgesLength(front, RAGLAN.side), edgesLength(back, RAGLAN.side))
  })

  it.each(['sleeve-short', 'sleeve-long'])(
    '%s and body have notches that meet, other ones in front and back',
    (piece) => {
      // From the underarm up.
      expectMeeting(pattern, size, ['front', [RAGLAN.armhole], true], [piece, [RAGLAN.sleeve.front], false])
      expectMeeting(pattern, size, ['back', [RAGLAN.armhole], true], [piece, [RAGLAN.sleeve.back], true])
      const sleeve = outlineOf(pattern, piece, size)
      const counts = [RAGLAN.sleeve.front, RAGLAN.sleeve.back].map((edge) =>
        notchesAlong(sleeve, [edge], true).map(({ count }) => count),
      )
      expect(counts).toEqual([[1], [2]])
    },
  )

  it('side seams have notches that meet', () => {
    expectMeeting(pattern, size, ['front', [RAGLAN.side], true], ['back', [RAGLAN.side], true])
  })

  it('neck and the edge that the band is reckoned from', () => {
    const sleeve = outlineOf(pattern, 'sleeve-long', size)
    const half =
      edgesLength(front, RAGLAN.neck) +
      edgesLength(back, RAGLAN.neck) +
      edgesLength(sleeve, RAGLAN.sleeve.top)
    expectEqual(2 * half, stripOf(pattern, 'neckband', size).edge)
  })
})

const TOP = { hem: 0, side: 1, armhole: 2, strap: 3, neck: 4 }

describe.each(sportsTop().sizes)('sports top %s: what is sewn together is of one length', (size) => {
  const pattern = sportsTop()
  const [front, back] = [outlineOf(pattern, 'front', size), outlineOf(pattern, 'back', size)]

  it('sides and straps', () => {
    expectEqual(edgesLength(front, TOP.side), edgesLength(back, TOP.side))
    expectEqual(edgesLength(front, TOP.strap), edgesLength(back, TOP.strap))
  })

  it('band and bindings and the edges that they are reckoned from', () => {
    const both = (edge: number) => edgesLength(front, edge) + edgesLength(back, edge)
    expectEqual(stripOf(pattern, 'band', size).edge, both(TOP.hem))
    expectEqual(stripOf(pattern, 'neck-binding', size).edge, 2 * both(TOP.neck))
    expectEqual(stripOf(pattern, 'armhole-binding', size).edge, both(TOP.armhole))
  })

  it('notches meet at the sides, and tell the armhole of the front from that of the back', () => {
    expectMeeting(pattern, size, ['front', [TOP.side], true], ['back', [TOP.side], true])
    const counts = [front, back].map((half) => notchesAlong(half, [TOP.armhole], true)[0]?.count)
    expect(counts).toEqual([1, 2])
  })

  it('lining and outside', () => {
    expect(outlineOf(pattern, 'front-lining', size)).toEqual(front)
    expect(outlineOf(pattern, 'back-lining', size)).toEqual(back)
  })
})

const LEG = { outer: [1, 2, 3], crotch: 6, inner: [7, 8] }

describe.each(leggings().sizes)('leggings %s: what is sewn together is of one length', (size) => {
  const pattern = leggings()

  it.each([
    ['front', 'back'],
    ['front-cropped', 'back-cropped'],
  ])('%s and %s, outer and inner seams', (one, other) => {
    const [front, back] = [outlineOf(pattern, one, size), outlineOf(pattern, other, size)]
    expectEqual(edgesLength(front, ...LEG.outer), edgesLength(back, ...LEG.outer))
    expectEqual(edgesLength(front, ...LEG.inner), edgesLength(back, ...LEG.inner))
  })

  it.each([
    ['front', 'back'],
    ['front-cropped', 'back-cropped'],
  ])(
    '%s and %s have notches that meet at knee and hip; the crotch has one in front, two at the back',
    (one, other) => {
      expectMeeting(pattern, size, [one, LEG.outer, true], [other, LEG.outer, true])
      expectMeeting(pattern, size, [one, LEG.inner, true], [other, LEG.inner, true])
      const counts = [one, other].map(
        (piece) => notchesAlong(outlineOf(pattern, piece, size), [LEG.crotch], true)[0]?.count,
      )
      expect(counts).toEqual([1, 2])
    },
  )
})

describe.each(boxerShorts().sizes)('boxer shorts %s', (size) => {
  it('have inner seams of one length', () => {
    const leg = outlineOf(boxerShorts(), 'leg', size)
    expectEqual(edgesLength(leg, 1), edgesLength(leg, 8))
  })

  it('have a crotch with one notch in front and two at the back', () => {
    const leg = outlineOf(boxerShorts(), 'leg', size)
    expect([7, 2].map((edge) => notchesAlong(leg, [edge], true).map(({ count }) => count))).toEqual([
      [1],
      [2],
    ])
  })
})

/** Half a ring sector on the fold: longer arc, straight end, shorter arc. */
const SECTOR = { long: 0, end: 1, short: 2 }
/** A whole one: half the longer arc, the zip's end, both halves of the shorter arc, the other end. */
const ZIP_GORE = { zip: 1, short: [2, 3], end: 4 }

describe.each(bucketHat().sizes)('bucket hat %s: what is sewn together is of one length', (size) => {
  const pattern = bucketHat()
  const [side, brim] = [outlineOf(pattern, 'side', size), outlineOf(pattern, 'brim', size)]

  it('two sides round the crown', () => {
    const crown = pattern.pieces.find(({ id }) => id === 'crown')?.shapes[size]
    const diameter = crown?.form === 'circle' ? crown.diameter : 0
    expectEqual(2 * 2 * edgesLength(side, SECTOR.short), Math.PI * diameter)
  })

  it('side and brim', () => {
    expectEqual(2 * 2 * edgesLength(side, SECTOR.long), 2 * 2 * edgesLength(brim, SECTOR.short))
  })
})

describe.each(halfCircleSkirt().sizes)(
  'half-circle skirt %s: what is sewn together is of one length',
  (size) => {
    const pattern = halfCircleSkirt()

    it.each(['gore-short', 'gore-knee'])('six of %s and two halves of the waistband', (piece) => {
      const gore = outlineOf(pattern, piece, size)
      const zipGore = outlineOf(pattern, `${piece}-zip`, size)
      const copies = (id: string) => pattern.pieces.find((one) => one.id === id)?.copies ?? 0
      const waist =
        copies(piece) * 2 * edgesLength(gore, SECTOR.short) +
        copies(`${piece}-zip`) * edgesLength(zipGore, ...ZIP_GORE.short)
      expectEqual(
        waist,
        stripOf(pattern, 'waistband', size).edge + stripOf(pattern, 'waistband-back', size).edge,
      )
      expectEqual(edgesLength(zipGore, ZIP_GORE.zip), edgesLength(gore, SECTOR.end))
      expectEqual(edgesLength(zipGore, ZIP_GORE.end), edgesLength(gore, SECTOR.end))
      expectMeeting(pattern, size, [piece, [SECTOR.end], true], [`${piece}-zip`, [ZIP_GORE.end], false])
      // From the waist down: the zip's own length.
      const [zipEnd] = notchesAlong(zipGore, [ZIP_GORE.zip], true)
      expectEqual(edgesLength(zipGore, ZIP_GORE.zip) - (zipEnd?.from ?? 0), 200)
    })

    it('is half a circle at the hem', () => {
      // The gores' straight ends all point at one centre, 6 × 30° = 180°.
      const gore = outlineOf(pattern, 'gore-knee', size)
      const [hem, waist] = [edgesLength(gore, SECTOR.long), edgesLength(gore, SECTOR.short)]
      expect(((hem - waist) / edgesLength(gore, SECTOR.end)) * 6 * 2).toBeCloseTo(Math.PI, 2)
    })
  },
)

describe.each(pouch().sizes)('pouch %s', (size) => {
  it('has a lining of its own size', () => {
    expect(outlineOf(pouch(), 'outer-lining', size)).toEqual(outlineOf(pouch(), 'outer', size))
  })
})
