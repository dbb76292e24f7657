import { ringsUnion } from './clipper.ts'
import { convexParts, convexSum } from './convex.ts'
import { polygonCounterClockwise } from './polygon.ts'
import type { Point, Polygon, Rings } from './types.ts'

/**
 * Minkowski sum { a + b } of two simple polygons, as rings: the union of the sums of their convex parts.
 * Built from filled parts, so it has no false holes, unlike a sweep of one boundary along the other
 * (a hole is kept only where it is real). Holes of no area are lost; see `noFit` for what that means to packing.
 */
export function minkowskiSum(a: Polygon, b: Polygon): Rings {
  const partsOfB = convexParts(b)
  const sums = convexParts(a).flatMap((part) => partsOfB.map((other) => convexSum(part, other)))
  return sums.length === 1 ? [polygonCounterClockwise(sums[0] as Polygon)] : ringsUnion(sums)
}

/** The polygon seen through the origin: every point p becomes −p. Winding is kept. */
export function polygonNegated(polygon: Polygon): Polygon {
  return polygon.map(([x, y]): Point => [-x, -y])
}
