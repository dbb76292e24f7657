import type { Mm } from '../../base/units.ts'
import { ringsDifference } from '../../geometry/clipper.ts'
import { minkowskiErosion } from '../../geometry/minkowski.ts'
import type { Point, Polygon, Rings } from '../../geometry/types.ts'
import { type FlatRings, flatContains, flatDistance2, flatRings } from './flat-rings.ts'
import { noFit } from './no-fit.ts'

/** How far rounding may let an item stick out: some steps of the polygon library's grid. */
const ROUNDING: Mm = 0.001

/**
 * Inner-fit region: the translations t at which `item` + t lies inside `container` (touching its boundary is
 * inside), as rings; empty if there are none. Either polygon may be non-convex. Rounding and lost sets of no
 * area: as for `noFit`.
 */
export function innerFit(container: Polygon, item: Polygon): Rings {
  const rings = minkowskiErosion(container, item)
  if (rings.length === 0) return rings
  const outer = flatRings([container])
  const inner = flatRings([item])
  const staysIn = ([x, y]: Point): boolean =>
    item.every(([px, py]) => within(outer, px + x, py + y)) &&
    !container.some(([px, py]) => wellWithin(inner, px - x, py - y))
  // Where edges all but coincide, rounding can leave slivers and spikes that reach millimetres too far.
  return rings.map((ring) => ring.filter(staysIn)).filter((ring) => ring.length > 2)
}

function within(rings: FlatRings, x: number, y: number): boolean {
  return flatContains(rings, x, y) || flatDistance2(rings, x, y) <= ROUNDING * ROUNDING
}

function wellWithin(rings: FlatRings, x: number, y: number): boolean {
  return flatContains(rings, x, y) && flatDistance2(rings, x, y) > ROUNDING * ROUNDING
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
