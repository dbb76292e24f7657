import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'

/** An edge of a counter-clockwise polygon and the strip to lose beside it, on the inside. */
export interface LosingEdge {
  readonly from: Point
  readonly to: Point
  readonly loss: Mm
}

/** Two cuts meet in a sharp corner unless that is farther off than this many times the wider strip. */
const MITRE_LIMIT = 4

/** Turns smaller than this (sine) go straight on. */
const STRAIGHT = 1e-9

export function lengthOf({ from, to }: LosingEdge): Mm {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}

/** Unit normal to the left of the edge. */
export function inward(edge: LosingEdge): Point {
  const length = lengthOf(edge)
  return [-(edge.to[1] - edge.from[1]) / length, (edge.to[0] - edge.from[0]) / length]
}

/** A point moved into the polygon, square to the edge, by what the edge loses. */
export function movedIn(point: Point, edge: LosingEdge): Point {
  const [nx, ny] = inward(edge)
  return [point[0] + nx * edge.loss, point[1] + ny * edge.loss]
}

/** Where the cuts beside two neighbouring edges meet; null if nowhere near their corner. */
export function meetingOf(before: LosingEdge, after: LosingEdge): Point | null {
  const [n1, n2] = [inward(before), inward(after)]
  const sine = n1[0] * n2[1] - n1[1] * n2[0]
  if (Math.abs(sine) < STRAIGHT) return before.loss === after.loss ? movedIn(after.from, after) : null
  // The meeting point m solves m·n1 = loss1 and m·n2 = loss2, counted from the corner.
  const mx = (before.loss * n2[1] - after.loss * n1[1]) / sine
  const my = (after.loss * n1[0] - before.loss * n2[0]) / sine
  if (Math.hypot(mx, my) > MITRE_LIMIT * Math.max(before.loss, after.loss)) return null
  return [after.from[0] + mx, after.from[1] + my]
}

/** Whether one edge is shorter than the other's wider strip, so that more than the neighbour lies within the strip's end. */
export function isShortCorner(before: LosingEdge, after: LosingEdge): boolean {
  if (before.loss === after.loss) return false
  return lengthOf(before) < after.loss || lengthOf(after) < before.loss
}

export function edgeAfter(edges: readonly LosingEdge[], k: number): LosingEdge {
  return edges[(k + 1) % edges.length] as LosingEdge
}
