import { polygonArea } from '../../geometry/polygon.ts'
import { polygonIsSimple } from '../../geometry/simple.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import { isShortCorner, type LosingEdge, meetingOf } from './losing-edge.ts'

/**
 * The quick way to cut strips off: every edge moved in, neighbours meeting in sharp corners, edge k of the result from
 * edge k. Null unless that is the whole truth: every edge still runs its own way, the ring does not cross itself, and
 * no edge is too short for its neighbour's wider strip.
 */
export function mitred(edges: readonly LosingEdge[]): Polygon | null {
  const corners: Point[] = []
  for (const [k, edge] of edges.entries()) {
    const before = edges.at(k - 1) as LosingEdge
    const corner = isShortCorner(before, edge) ? null : meetingOf(before, edge)
    if (!corner) return null
    corners.push(corner)
  }
  const kept = corners.every((from, k) => runsOn(from, nextCorner(corners, k), edges[k] as LosingEdge))
  return kept && polygonArea(corners) > 0 && polygonIsSimple(corners) ? corners : null
}

function nextCorner(corners: readonly Point[], k: number): Point {
  return corners[(k + 1) % corners.length] as Point
}

function runsOn(from: Point, to: Point, edge: LosingEdge): boolean {
  const along =
    (to[0] - from[0]) * (edge.to[0] - edge.from[0]) + (to[1] - from[1]) * (edge.to[1] - edge.from[1])
  return along > 0
}
