import type { Mm } from '../base/units.ts'
import type { Point } from '../geometry/types.ts'

/** A straight edge of a counter-clockwise seam line and how far outside it the cut line runs. */
export interface Side {
  readonly from: Point
  readonly to: Point
  readonly reach: Mm
  /** What lies outside it is folded back over it. */
  readonly folds: boolean
}

/** A corner's mitre is squared off where it would stand farther out than this many times the wider allowance. */
export const MITRE_LIMIT = 4

/** Turns smaller than this (sine) count as straight on. */
const STRAIGHT = 1e-9

/** A corner and the two cut lines that come together there. `sin`, `cos`: of the turn to the left. */
interface Turn {
  readonly at: Point
  readonly along1: Point
  readonly along2: Point
  readonly out1: Point
  readonly out2: Point
  readonly reach1: Mm
  readonly reach2: Mm
  readonly sin: number
  readonly cos: number
}

/**
 * The cut line's points where it passes from one edge to the next.
 * - Outward corner: the two cut lines meet in a mitre, squared off when too sharp. When the corner is so flat that the
 *   mitre would eat into the wider allowance, the cut line steps out squarely from the corner instead.
 * - Inward corner: the two cut lines meet. When the corner is too sharp or an edge too short for that, the points run through the corner
 *   itself, which leaves loops that wind positively; whoever calls must clean them.
 */
export function cornerPoints(before: Side, after: Side): readonly Point[] {
  const turn = turnBetween(before, after)
  const { sin, cos, reach1, reach2 } = turn
  if (Math.abs(sin) < STRAIGHT && cos > 0) return [end1(turn), end2(turn)]
  // How far along its cut line, from the square of the corner, each edge meets the other's cut line.
  const past1 = (reach2 - reach1 * cos) / sin
  const past2 = (reach2 * cos - reach1) / sin
  if (sin > 0) {
    if (past1 < 0) return [end1(turn), moved(turn.at, turn.out1, reach2 / cos)]
    if (past2 > 0) return [moved(turn.at, turn.out2, reach1 / cos), end2(turn)]
    return mitre(turn, past1)
  }
  const meet =
    past1 <= 0 && past2 >= 0 && overlapsWithin(turn, -past1, lengthOf(before), past2, lengthOf(after))
  return meet ? [moved(end1(turn), turn.along1, past1)] : [end1(turn), turn.at, end2(turn)]
}

function turnBetween(before: Side, after: Side): Turn {
  const along1 = direction(before)
  const along2 = direction(after)
  return {
    at: after.from,
    along1,
    along2,
    out1: [along1[1], -along1[0]],
    out2: [along2[1], -along2[0]],
    reach1: before.reach,
    reach2: after.reach,
    sin: along1[0] * along2[1] - along1[1] * along2[0],
    cos: dot(along1, along2),
  }
}

/**
 * Whether what the two allowances share at an inward corner (the corner, both square ends, the meeting point) lies in the
 * allowances of both edges. Only then may it be passed by: it stays covered, whatever happens at the edges' other ends.
 */
function overlapsWithin(
  { sin, cos, reach1, reach2 }: Turn,
  back1: Mm,
  length1: Mm,
  ahead2: Mm,
  length2: Mm,
): boolean {
  return cos >= 0 && Math.max(back1, -reach2 * sin) <= length1 && Math.max(ahead2, -reach1 * sin) <= length2
}

function mitre(turn: Turn, past1: Mm): readonly Point[] {
  const tip = moved(end1(turn), turn.along1, past1)
  const spread = Math.hypot(turn.along1[0] - turn.along2[0], turn.along1[1] - turn.along2[1])
  const outward: Point = [
    (turn.along1[0] - turn.along2[0]) / spread,
    (turn.along1[1] - turn.along2[1]) / spread,
  ]
  const limit = MITRE_LIMIT * Math.max(turn.reach1, turn.reach2)
  const stands = (point: Point): Mm => dot([point[0] - turn.at[0], point[1] - turn.at[1]], outward)
  if (stands(tip) <= limit) return [tip]
  const square1 = (limit - stands(end1(turn))) / dot(turn.along1, outward)
  const square2 = (limit - stands(end2(turn))) / dot(turn.along2, outward)
  return [moved(end1(turn), turn.along1, square1), moved(end2(turn), turn.along2, square2)]
}

/** Square out from the corner onto the first edge's cut line. */
function end1({ at, out1, reach1 }: Turn): Point {
  return moved(at, out1, reach1)
}

/** Square out from the corner onto the second edge's cut line. */
function end2({ at, out2, reach2 }: Turn): Point {
  return moved(at, out2, reach2)
}

function direction(side: Side): Point {
  const length = lengthOf(side)
  return [(side.to[0] - side.from[0]) / length, (side.to[1] - side.from[1]) / length]
}

function lengthOf({ from, to }: Side): Mm {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}

function moved(point: Point, along: Point, by: Mm): Point {
  return [point[0] + along[0] * by, point[1] + along[1] * by]
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1]
}
