import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type Point,
  type Polygon,
  pointInPolygon,
  polygonArea,
  polygonMoved,
} from '../../../src/core/geometry/index.ts'
import { polygonIsSimple } from '../../../src/core/geometry/simple.ts'
import { offcutsOf } from '../../../src/core/stash/offcuts-of.ts'
import { outlineWithin } from '../../../src/core/stash/overlaps.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { distanceToLine, overlapArea, starPolygon, toJsts, uncoveredArea } from '../../support/planar.ts'

const SLIVER = 30

const areaOf = (outlines: readonly Polygon[]) =>
  outlines.reduce((sum, one) => sum + Math.abs(polygonArea(one)), 0)

/** Cloth of an offcut: holes are among its flaws. */
const clothArea = (outline: Polygon, holes: readonly Polygon[]) => areaOf([outline]) - areaOf(holes)

function offcuts(
  outline: Polygon,
  pieces: readonly Polygon[],
  more: { flaws?: Polygon[]; reserved?: Polygon[] } = {},
) {
  return offcutsOf({
    outline,
    pieces,
    flaws: more.flaws ?? [],
    reserved: more.reserved ?? [],
    sliver: SLIVER,
  })
}

describe('the offcuts of a panel', () => {
  const panel = rectangle(600, 400)

  it('are the panel itself when nothing is cut', () => {
    const { offcuts: left, sliverArea } = offcuts(panel, [])
    expect(left).toHaveLength(1)
    expect(areaOf([left[0]!.outline])).toBeCloseTo(240_000, 3)
    expect(left[0]!.outline).toHaveLength(4)
    expect(sliverArea).toBeCloseTo(0, 3)
  })

  it('are two when a piece goes right through, and none is left when it takes all', () => {
    const { offcuts: left } = offcuts(panel, [rectangle(100, 400, 200, 0)])
    expect(left.map(({ outline }) => areaOf([outline])).sort((a, b) => a - b)).toEqual([80_000, 120_000])
    expect(offcuts(panel, [panel]).offcuts).toEqual([])
  })

  it('keep straight edges and sharp corners where the cloth is wide', () => {
    const { offcuts: left } = offcuts(panel, [rectangle(200, 100)])
    expect(left).toHaveLength(1)
    expect(left[0]!.outline).toHaveLength(6)
    expect(areaOf([left[0]!.outline])).toBeCloseTo(220_000, 3)
  })

  it('leave out strips narrower than slivers, and keep those just wider', () => {
    const narrow = offcuts(panel, [rectangle(600, 400 - 29)])
    expect(narrow).toEqual({ offcuts: [], sliverArea: expect.closeTo(600 * 29, 2) })
    expect(offcuts(panel, [rectangle(600, 400 - 31)]).offcuts).toHaveLength(1)
  })

  it('fall apart at a neck narrower than a sliver', () => {
    // Two squares joined by a bridge 20 mm wide.
    const pieces = [rectangle(100, 190, 250, 0), rectangle(100, 190, 250, 210)]
    const { offcuts: left, sliverArea } = offcuts(panel, pieces)
    expect(left).toHaveLength(2)
    expect(sliverArea).toBeGreaterThan(20 * 60)
    expect(sliverArea).toBeLessThan(20 * 100 + 1)
  })

  it('have the hole of a piece cut from the middle as a flaw, and the flaws that they hold', () => {
    const stain = rectangle(20, 20, 10, 10)
    const { offcuts: left } = offcuts(panel, [rectangle(100, 100, 200, 150)], { flaws: [stain] })
    expect(left).toHaveLength(1)
    expect(left[0]!.outline).toHaveLength(4)
    expect(left[0]!.flaws).toHaveLength(2)
    expect(left[0]!.flaws.map((flaw) => areaOf([flaw])).sort((a, b) => a - b)).toEqual([400, 10_000])
  })

  it('stay as narrow as they are where somebody else has reserved', () => {
    const strap = rectangle(600, 20, 0, 380)
    const { offcuts: left } = offcuts(panel, [rectangle(600, 375)], { reserved: [strap] })
    expect(left).toHaveLength(1)
    expect(areaOf([left[0]!.outline])).toBeCloseTo(600 * 25, 2)
  })

  it('come apart where they only touch at a point', () => {
    const pieces = [rectangle(300, 200), rectangle(300, 200, 300, 200)]
    const { offcuts: left } = offcuts(panel, pieces, {
      reserved: [rectangle(10, 10, 5, 300), rectangle(10, 10, 500, 5)],
    })
    expect(left).toHaveLength(2)
    for (const { outline } of left) expect(polygonIsSimple(outline)).toBe(true)
  })
})

/** A place of 100 × 100 with some outline in it, far enough inside that neighbours touch at most. */
const inSlot = fc.oneof(
  starPolygon(9, 50),
  fc
    .tuple(fc.integer({ min: 20, max: 100 }), fc.integer({ min: 20, max: 100 }))
    .map(([w, h]) => rectangle(w, h, -50, -50)),
)

const slots = fc.array(fc.record({ outline: inSlot, use: fc.constantFrom('cut', 'reserved', 'nothing') }), {
  minLength: 20,
  maxLength: 20,
})

const panels = fc.oneof(fc.constant(rectangle(500, 400, -250, -200)), starPolygon(24, 330))

describe('the offcuts of any panel', () => {
  it('balance: panel = pieces + offcuts + slivers; no offcut lies on a piece; each reserved place is in one offcut', () => {
    fc.assert(
      fc.property(panels, slots, fc.integer({ min: 5, max: 60 }), (outline, filled, sliver) => {
        const border = toJsts(outline)
        const laid = filled.flatMap(({ outline: drawn, use }, i) => {
          const at = polygonMoved(drawn, -200 + (i % 5) * 100, -150 + Math.floor(i / 5) * 100)
          return uncoveredArea(toJsts(at), border) < 1e-6 ? [{ outline: at, use }] : []
        })
        const of = (use: string) => laid.filter((one) => one.use === use).map((one) => one.outline)
        const [pieces, reserved] = [of('cut'), of('reserved')]
        const { offcuts: left, sliverArea } = offcutsOf({ outline, flaws: [], pieces, reserved, sliver })

        const total =
          areaOf(pieces) + left.reduce((sum, one) => sum + clothArea(one.outline, one.flaws), 0) + sliverArea
        expect(Math.abs(total - areaOf([outline]))).toBeLessThan(2)
        for (const one of left) {
          const cloth = toJsts(one.outline)
          expect(polygonIsSimple(one.outline)).toBe(true)
          expect(uncoveredArea(cloth, border)).toBeLessThan(0.5)
          for (const piece of pieces) {
            const holed = one.flaws.some((hole) => uncoveredArea(toJsts(piece), toJsts(hole)) < 0.5)
            if (!holed) expect(overlapArea(cloth, toJsts(piece))).toBeLessThan(0.5)
          }
        }
        for (const place of reserved) {
          const homes = left.filter(
            (one) =>
              outlineWithin(place, one.outline) &&
              one.flaws.every((hole) => overlapArea(toJsts(place), toJsts(hole)) < 0.5),
          )
          expect(homes).toHaveLength(1)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('hold every point that is farther than half a sliver from all that was cut and from the edge', () => {
    const points = fc.array(
      fc.tuple(fc.integer({ min: -250, max: 250 }), fc.integer({ min: -200, max: 200 })),
      { minLength: 30, maxLength: 30 },
    )
    fc.assert(
      fc.property(panels, slots, points, (outline, filled, tried) => {
        const pieces = filled.flatMap(({ outline: drawn, use }, i) =>
          use === 'cut' ? [polygonMoved(drawn, -200 + (i % 5) * 100, -150 + Math.floor(i / 5) * 100)] : [],
        )
        const { offcuts: left } = offcutsOf({ outline, flaws: [], pieces, reserved: [], sliver: SLIVER })
        for (const point of tried) {
          if (pointInPolygon(point, outline) < 1 || pieces.some((piece) => pointInPolygon(point, piece) >= 0))
            continue
          if ([outline, ...pieces].some((ring) => distanceToRing(point, ring) < SLIVER / 2 + 0.1)) continue
          expect(left.some((one) => pointInPolygon(point, one.outline) >= 0)).toBe(true)
        }
      }),
      { numRuns: 40 },
    )
  })
})

function distanceToRing(point: Point, ring: Polygon): number {
  return Math.min(...ring.map((to, i) => distanceToLine(point, [ring.at(i - 1)!, to])))
}
