import { ringsDifference } from '../../geometry/clipper.ts'
import { minkowskiErosion } from '../../geometry/minkowski.ts'
import type { Polygon, Rings } from '../../geometry/types.ts'
import { noFit } from './no-fit.ts'

/**
 * Inner-fit region: the translations t at which `item` + t lies inside `container` (touching its boundary is
 * inside), as rings; empty if there are none. Either polygon may be non-convex. Rounding and lost sets of no
 * area: as for `noFit`.
 */
export function innerFit(container: Polygon, item: Polygon): Rings {
  return minkowskiErosion(container, item)
}

/**
 * Where `item` may lie in a region by itself: its inner-fit region without the no-fit polygons of the
 * forbidden areas. Rings in the plane of translations.
 */
export function feasibleDomain(outline: Polygon, forbidden: readonly Polygon[], item: Polygon): Rings {
  const inside = innerFit(outline, item)
  if (inside.length === 0 || forbidden.length === 0) return inside
  return ringsDifference(
    inside,
    forbidden.flatMap((area) => noFit(area, item)),
  )
}
