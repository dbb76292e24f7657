import { minkowskiSum, polygonNegated } from '../../geometry/minkowski.ts'
import type { Polygon, Rings } from '../../geometry/types.ts'

/**
 * No-fit polygon: the translations t at which `moving` + t overlaps `fixed`, as rings. t strictly inside means
 * that the two interiors meet; t on the boundary means that they touch (Art 1966; Cuninghame-Green 1989).
 * It is fixed ⊕ (−moving), so `noFit(b, a)` is `noFit(a, b)` seen through the origin.
 *
 * Vertices are rounded to the library's grid, which moves them by at most 0.0001 mm. A touching position with
 * overlap all round it (a slit or a single point, as when a peg fits its hole exactly) has no area and is lost:
 * a search that wants such fits asks with outlines made a little smaller (`engine/shrunk.ts`); a proof must
 * not conclude from the last 0.0002 mm.
 */
export function noFit(fixed: Polygon, moving: Polygon): Rings {
  return minkowskiSum(fixed, polygonNegated(moving))
}
