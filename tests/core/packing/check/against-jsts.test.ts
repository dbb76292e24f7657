import fc from 'fast-check'
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js'
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js'
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js'
import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js'
import { describe, expect, it } from 'vitest'
import type { Polygon } from '../../../../src/core/geometry/index.ts'
import { outlineOf } from '../../../../src/core/packing/check/outline.ts'
import { closerThan, liesWithin, overlapDeeply } from '../../../../src/core/packing/check/touch.ts'
import { starPolygon, toJsts } from '../../../support/planar.ts'

/** Reference: the JTS library, through jsts. */
const RUNS = { numRuns: 1500 }
const T = 0.01

const shape = fc.integer({ min: 3, max: 12 }).chain((corners) => starPolygon(corners, 60))
const moved = fc
  .tuple(shape, fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true }))
  .map(([polygon, dx, dy]): Polygon => polygon.map(([x, y]) => [x + dx, y + dy]))

/**
 * True if some disc of more than this radius lies in the shape. JTS's buffer breaks on some slivers (an assertion of
 * its own); then the radius is known to be at least area / boundary length, since A ≤ L r for every plane figure.
 */
function holdsDisc(shape: Geometry, radius: number): boolean {
  try {
    return BufferOp.bufferOp(shape, -radius).getArea() > 0
  } catch {
    return shape.getArea() / shape.getLength() > radius
  }
}

describe('the checker against JTS', () => {
  it('refuses every overlap deeper than the tolerance and accepts every pair with no common area', () => {
    const seen = { apart: 0, over: 0 }
    fc.assert(
      fc.property(shape, moved, (a, b) => {
        const shared = OverlayOp.intersection(toJsts(a), toJsts(b))
        const over = overlapDeeply(outlineOf(a), outlineOf(b), T)
        if (shared.getArea() < 1e-9) {
          seen.apart++
          expect(over).toBe(false)
        } else if (holdsDisc(shared, 1.1 * T)) {
          seen.over++
          expect(over).toBe(true)
        }
      }),
      RUNS,
    )
    expect(Math.min(seen.apart, seen.over)).toBeGreaterThan(100)
  }, 120_000)

  it('refuses every piece that sticks out and accepts every piece that does not', () => {
    const seen = { inside: 0, out: 0 }
    const small = fc
      .tuple(moved, fc.integer({ min: 1, max: 6 }))
      .map(([polygon, by]): Polygon => polygon.map(([x, y]) => [x / by, y / by]))
    fc.assert(
      fc.property(small, shape, (inner, outer) => {
        const out = OverlayOp.difference(toJsts(inner), toJsts(outer))
        const within = liesWithin(outlineOf(inner), outlineOf(outer), T)
        if (out.getArea() < 1e-9) {
          seen.inside++
          expect(within).toBe(true)
        } else if (holdsDisc(out, 1.1 * T)) {
          seen.out++
          expect(within).toBe(false)
        }
      }),
      RUNS,
    )
    expect(Math.min(seen.inside, seen.out)).toBeGreaterThan(100)
  }, 120_000)

  it('measures the same distance', () => {
    fc.assert(
      fc.property(shape, moved, fc.double({ min: 0.1, max: 40, noNaN: true }), (a, b, clearance) => {
        const distance = DistanceOp.distance(toJsts(a), toJsts(b))
        if (Math.abs(distance - clearance) < 1e-6) return
        expect(closerThan(outlineOf(a), outlineOf(b), clearance)).toBe(distance < clearance)
      }),
      RUNS,
    )
  })

  it('accepts a piece and what a cut leaves of it, side by side (shared edges, slivers)', () => {
    // Both halves of a shape cut by a straight line touch along the cut and share two corners.
    fc.assert(
      fc.property(
        fc.integer({ min: 6, max: 14 }),
        fc.integer({ min: 2, max: 9 }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (n, k, share) => {
          const at = (i: number): [number, number] => [
            60 * Math.cos((2 * Math.PI * i) / n + share),
            60 * Math.sin((2 * Math.PI * i) / n + share),
          ]
          const cut = 2 + (k % (n - 3))
          const first = Array.from({ length: cut + 1 }, (_, i) => at(i))
          const second = [...Array.from({ length: n - cut }, (_, i) => at(cut + i)), at(0)]
          expect(overlapDeeply(outlineOf(first), outlineOf(second), T)).toBe(false)
          expect(
            liesWithin(outlineOf(first), outlineOf([...first.slice(0, -1), ...second.slice(0, -1)]), T),
          ).toBe(true)
          expect(overlapDeeply(outlineOf(first), outlineOf(first), T)).toBe(true)
        },
      ),
    )
  })
})
