import { windingRings } from './clipper.ts'
import { convexSum, polygonIsConvex } from './convex.ts'
import { convolution } from './convolution.ts'
import { polygonArea, polygonBox, polygonCounterClockwise } from './polygon.ts'
import type { Point, Polygon, Rings } from './types.ts'

/**
 * Minkowski sum { a + b } of two simple polygons, as rings: where their convolution winds a positive number of
 * times. Holes of no area are lost; see `noFit` for what that means to packing.
 */
export function minkowskiSum(a: Polygon, b: Polygon): Rings {
  const p = polygonCounterClockwise(a)
  const q = polygonCounterClockwise(b)
  if (polygonIsConvex(p) && polygonIsConvex(q)) return [convexSum(p, q)]
  return windingRings(convolution(p, q), 1)
}

/**
 * Minkowski erosion { t : b + t ⊆ a } of two simple polygons, as rings. The outside of `a` is `a` wound
 * clockwise; the convolution of that with −b winds (parts of b + t outside a) − 1 times, which is negative only
 * where nothing of b lies outside, or where b encloses a: the case that the areas rule out beforehand.
 * Parts of no area are lost. What can be told from the boxes alone, as it mostly can where there are none, is.
 */
export function minkowskiErosion(a: Polygon, b: Polygon): Rings {
  if (Math.abs(polygonArea(b)) > Math.abs(polygonArea(a)) || isLongerEitherWay(b, a)) return []
  const outside = [...polygonCounterClockwise(a)].reverse()
  return windingRings(convolution(outside, polygonNegated(polygonCounterClockwise(b))), -1)
}

/** True if the first polygon is wider or higher than the second, so that no translation brings it inside. */
function isLongerEitherWay(a: Polygon, b: Polygon): boolean {
  const inner = polygonBox(a)
  const outer = polygonBox(b)
  return (
    inner.maxX - inner.minX > outer.maxX - outer.minX || inner.maxY - inner.minY > outer.maxY - outer.minY
  )
}

/** The polygon seen through the origin: every point p becomes −p. Winding is kept. */
export function polygonNegated(polygon: Polygon): Polygon {
  return polygon.map(([x, y]): Point => [-x, -y])
}
