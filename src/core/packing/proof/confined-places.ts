import type { Mm } from '../../base/units.ts'
import { ringsOffset } from '../../geometry/clipper.ts'
import { minkowskiErosion, polygonNegated } from '../../geometry/minkowski.ts'
import { polygonArea, polygonCentroid, polygonCounterClockwise } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Point, Polygon, Rings, Way } from '../../geometry/types.ts'
import { discOutside, edgeLength, offSeat, type SeatSlack, sittingSet } from '../engine/confinement.ts'
import type { Item, Region, Seat, Showing } from '../problem.ts'
import { coreOutline, MARGIN, movedByTilt } from './core-outline.ts'

/** A seat is met to within this for all that is proved: more than any rounding, and as much as a lay may be off. */
const SEAT_SLACK: SeatSlack = { outward: 0.01, inward: 0.01, beyond: 0.01 }

/** Every orientation in which an item may have its place in a region: one that sits has only those of its seats. */
export function confinedWays(
  { outline, sits }: Item,
  { seats = [] }: Region,
  ways: readonly Way[],
): readonly Way[] {
  if (sits === undefined) return ways
  return seats.flatMap((seat) => ways.flatMap((way) => seatedRange(outline, sits, seat, way) ?? []))
}

/**
 * Lemma: an edge whose ends are both within the slack of a seat's line is askew by no more than twice the slack over its
 * length. So no other turn of the way seats it; null if there is none.
 */
function seatedRange(outline: Polygon, edge: number, seat: Seat, way: Way): Way | null {
  const askew = Math.min(1, (2 * SEAT_SLACK.outward) / edgeLength(outline, edge))
  const loose = (Math.asin(askew) * 180) / Math.PI
  const off = offSeat(outline, edge, seat, way)
  const [low, high] = [Math.max(-way.tilt, off - loose), Math.min(way.tilt, off + loose)]
  return low > high ? null : { ...way, turn: way.turn + (low + high) / 2, tilt: (high - low) / 2 }
}

/**
 * Sets whose meet holds every translation of the item's outline, held in any orientation of `way`, at which the item
 * sits and shows what it must, and more. `centred` is the outline with the middle of its bounds at the origin, and
 * `by` how far it was moved for that.
 */
export function confinedPlaces(
  item: Item,
  region: Region,
  way: Way,
  centred: Polygon,
  by: Point,
): readonly Rings[] {
  const { sits, shows } = item
  const seated =
    sits === undefined ? [] : [sittingSet(centred, sits, region.seats ?? [], way, seatSlack(centred, way))]
  if (!shows) return seated
  const { centre, radius } = placeOfSpot(shows, way, by)
  return [...seated, ...holding(shows, way, centred), [discOutside(centre, radius)]]
}

/** Turned by up to its tilt, the edge's ends move by so much at most. */
function seatSlack(centred: Polygon, { tilt }: Way): SeatSlack {
  const moved = movedByTilt(Math.max(...centred.map(([x, y]) => Math.hypot(x, y))), tilt)
  const { outward, inward, beyond } = SEAT_SLACK
  return { outward: outward + moved, inward: inward + moved, beyond: beyond + moved }
}

/**
 * Lemma: turned by up to `tilt` about the middle, a point r from it moves by at most 2 r sin(tilt / 2). So the spot's
 * centroid is within `within` and that much of where the middle turn has the point of the item, or it is shown in none.
 */
export function placeOfSpot(
  { spot, at, within }: Showing,
  way: Way,
  [bx, by]: Point,
): { readonly centre: Point; readonly radius: Mm } {
  const own: Point = [at[0] + bx, at[1] + by]
  const [px, py] = polygonOriented([own], way)[0] as Point
  const [mx, my] = polygonCentroid(spot)
  return {
    centre: [mx - px, my - py],
    radius: within + movedByTilt(Math.hypot(...own), way.tilt) + MARGIN,
  }
}

/**
 * Lemma: if the spot lies in the item held somehow, its core lies in the item held at the middle turn and grown by all
 * that the tilt may move a point. Nothing is said of spots too thin to have a core.
 */
export function holding({ spot }: Showing, way: Way, centred: Polygon): readonly Rings[] {
  const core = coreOutline(spot, { turn: 0, mirrored: false, tilt: 0 })
  if (!core) return []
  const reach = Math.max(...centred.map(([x, y]) => Math.hypot(x, y)))
  const held = polygonCounterClockwise(polygonOriented(centred, way))
  const grown = ringsOffset([held], MARGIN + movedByTilt(reach, way.tilt), 'mitre')
  // Whatever the item encloses counts as item.
  const outer = grown.reduce((a, b) => (polygonArea(b) > polygonArea(a) ? b : a))
  return [minkowskiErosion(outer, core).map(polygonNegated)]
}
