import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringsArea, ringsDifference, ringsUnion } from '../../../src/core/geometry/clipper.ts'
import { convexHull, convexSum } from '../../../src/core/geometry/convex.ts'
import { polygonArea } from '../../../src/core/geometry/index.ts'
import { minkowskiErosion, minkowskiSum } from '../../../src/core/geometry/minkowski.ts'
import type { Point } from '../../../src/core/geometry/types.ts'
import { convexParts } from '../../support/convex-parts.ts'
import { ringsContain, starPolygon } from '../../support/planar.ts'

describe('Minkowski sum', () => {
  it('is the union of the sums of convex parts, which is another way to compute it', () => {
    fc.assert(
      fc.property(starPolygon(14, 100), starPolygon(9, 70), (a, b) => {
        const sum = minkowskiSum(a, b)
        const others = convexParts(b)
        const reference = ringsUnion(
          convexParts(a).flatMap((part) => others.map((other) => convexSum(part, other))),
        )
        const differing =
          ringsArea(ringsDifference(sum, reference)) + ringsArea(ringsDifference(reference, sum))
        expect(differing).toBeLessThan(0.5)
      }),
      { numRuns: 60, seed: 1 },
    )
  })

  it('holds a + b for points a and b of the polygons, by definition', () => {
    fc.assert(
      fc.property(starPolygon(10, 100), starPolygon(10, 100), fc.nat(9), fc.nat(9), (a, b, i, j) => {
        const [ax, ay] = a[i]!
        const [bx, by] = b[j]!
        // A hair towards the star's centre, so that the point is inside and not on the boundary.
        const point: Point = [(ax + bx) * 0.999, (ay + by) * 0.999]
        expect(ringsContain(minkowskiSum(a, b), point)).toBe(true)
      }),
      { numRuns: 100, seed: 1 },
    )
  })

  it('of convex polygons has the area of both and their mixed area, which is symmetric and scales', () => {
    fc.assert(
      fc.property(starPolygon(12, 100), starPolygon(12, 100), (p, q) => {
        const a = convexHull(p)
        const b = convexHull(q)
        const twice = b.map(([x, y]): Point => [2 * x, 2 * y])
        const mixed = ringsArea(minkowskiSum(a, b)) - polygonArea(a) - polygonArea(b)
        const mixedTwice = ringsArea(minkowskiSum(a, twice)) - polygonArea(a) - 4 * polygonArea(b)
        expect(mixedTwice / mixed).toBeCloseTo(2, 6)
        // Minkowski's inequality: mixed² ≥ 4 · area · area.
        expect(mixed * mixed).toBeGreaterThanOrEqual(4 * polygonArea(a) * polygonArea(b) * (1 - 1e-9))
      }),
      { numRuns: 60, seed: 1 },
    )
  })
})

describe('Minkowski erosion', () => {
  it('undoes a sum of a convex polygon with a convex polygon', () => {
    fc.assert(
      fc.property(starPolygon(9, 100), starPolygon(9, 60), (p, q) => {
        const a = convexHull(p)
        const b = convexHull(q)
        const eroded = minkowskiErosion(convexSum(a, b), b)
        expect(ringsArea(eroded)).toBeCloseTo(polygonArea(a), 0)
      }),
      { numRuns: 60, seed: 1 },
    )
  })
})
