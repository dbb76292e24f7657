import type { Deg, Mm } from '../../base/units.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Orientation, Point, Polygon, Rings, Way } from '../../geometry/types.ts'
import type { Item, Region, Seat } from '../problem.ts'

/*
 * Items that may not lie just anywhere: those that sit with an edge on a seat, and those that show a spot. Both are
 * sets of translations for each orientation, to be intersected with where the item has room at all.
 */

/** True if the item must sit or show something. */
export function isConfined({ sits, shows }: Item): boolean {
  return sits !== undefined || shows !== undefined
}

/** What an item may not overlap in a region. */
export function forbiddenTo(sits: boolean, { forbidden, keptClear = [] }: Region): readonly Polygon[] {
  return sits || keptClear.length === 0 ? forbidden : [...forbidden, ...keptClear]
}

/** A region as it is for an item. */
export function groundOf({ sits }: Item, region: Region): Region {
  return { ...region, forbidden: forbiddenTo(sits !== undefined, region) }
}

/** An edge that is off its seat's direction by no more than this at its end lies along it: what the rounding of coordinates costs. */
export const ASKEW: Mm = 0.004

/**
 * The ways in which the edge lies along one of the seats, each a single turn. Item and region both lie to the left of
 * their boundaries, so the two run in one direction and the turn is given. Where that turn is out of the range
 * allowed by no more than `ASKEW` at the edge's end, it is the nearest one allowed.
 */
export function sittingWays(
  outline: Polygon,
  edge: number,
  seats: readonly Seat[],
  ways: readonly Way[],
): readonly Way[] {
  const found = new Map<string, Way>()
  const length = edgeLength(outline, edge)
  for (const { turn, tilt, mirrored } of ways) {
    for (const seat of seats) {
      const off = offSeat(outline, edge, seat, { turn, mirrored })
      const allowed = Math.max(-tilt, Math.min(tilt, off))
      const askew = Math.abs(off - allowed) * (Math.PI / 180) * length
      if (askew > ASKEW) continue
      const way = { turn: turn + allowed, tilt: 0, mirrored }
      found.set(`${way.turn} ${mirrored}`, way)
    }
  }
  return [...found.values()]
}

/** By how much the outline, held so, must still turn for its edge to run along the seat, in [−180, 180). */
export function offSeat(outline: Polygon, edge: number, { from, to }: Seat, held: Orientation): Deg {
  const [p, q] = edgeHeld(outline, edge, { turn: 0, mirrored: held.mirrored })
  return halfCircle(direction(from, to) - direction(p, q) - held.turn)
}

/** How far an edge may be off its seat, all mm: `outward` and `inward` of it, and `beyond` its ends. */
export interface SeatSlack {
  readonly outward: Mm
  readonly inward: Mm
  readonly beyond: Mm
}

/** Translations that bring the edge of the outline, held so, onto one of the seats: a thin rectangle for each that is long enough. */
export function sittingSet(
  outline: Polygon,
  edge: number,
  seats: readonly Seat[],
  orientation: Orientation,
  { outward, inward, beyond }: SeatSlack,
): Rings {
  const [p, q] = edgeHeld(outline, edge, orientation)
  return seats.flatMap(({ from, to }): Polygon[] => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    const along = ([x, y]: Point) => ux * (x - from[0]) + uy * (y - from[1])
    const inside = ([x, y]: Point) => ux * (y - from[1]) - uy * (x - from[0])
    if (along(q) <= along(p)) return []
    // Translation u along the seat and v into the region, counted from the seat's start.
    const [u1, u2] = [-beyond - along(p), length + beyond - along(q)]
    const [v1, v2] = [-outward - Math.min(inside(p), inside(q)), inward - Math.max(inside(p), inside(q))]
    if (u1 >= u2 || v1 >= v2) return []
    const corner = (u: number, v: number): Point => [u * ux - v * uy, u * uy + v * ux]
    return [[corner(u1, v1), corner(u2, v1), corner(u2, v2), corner(u1, v2)]]
  })
}

/** The ends of an edge of the outline, held so, walked with the item on its left. */
function edgeHeld(outline: Polygon, edge: number, orientation: Orientation): readonly [Point, Point] {
  const ends: Polygon = [outline[edge] as Point, outline[(edge + 1) % outline.length] as Point]
  const [p, q] = polygonOriented(ends, orientation) as [Point, Point]
  return polygonArea(outline) < 0 !== orientation.mirrored ? [q, p] : [p, q]
}

/** The edge's length. */
export function edgeLength(outline: Polygon, edge: number): Mm {
  const [p, q] = edgeHeld(outline, edge, { turn: 0, mirrored: false })
  return Math.hypot(q[0] - p[0], q[1] - p[1])
}

function direction(from: Point, to: Point): number {
  return (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
}

/** The same angle in [−180, 180). */
function halfCircle(turn: number): number {
  return ((((turn + 180) % 360) + 360) % 360) - 180
}

const DISC_SIDES = 48

/** A regular polygon whose corners are `radius` from the centre, four of them straight across and along. */
export function discInside([x, y]: Point, radius: Mm): Polygon {
  return Array.from({ length: DISC_SIDES }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / DISC_SIDES
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
  })
}

/** A regular polygon whose sides are `radius` from the centre. */
export function discOutside(centre: Point, radius: Mm): Polygon {
  return discInside(centre, radius / Math.cos(Math.PI / DISC_SIDES))
}
