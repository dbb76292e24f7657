import type { Mm } from '../../base/units.ts'
import { ringsDifference, ringsOffset } from '../../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../../geometry/polygon.ts'
import { polygonIsSimple } from '../../geometry/simple.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import { discAround } from '../disc.ts'
import { edgeAfter, isShortCorner, type LosingEdge, meetingOf, movedIn } from './losing-edge.ts'
import { distanceToSegment } from './segment.ts'

/** Everything left when the strips are cut off, in parts: the slow way, which holds for any simple polygon. */
export function remainder(edges: readonly LosingEdge[]): readonly Polygon[] {
  const outline = edges.map((edge) => edge.from)
  const strips = edges.flatMap((edge, k) => [strip(edge), ...cornerStrips(edge, edgeAfter(edges, k))])
  const solid = strips.filter((ring) => polygonArea(ring) !== 0).map(polygonCounterClockwise)
  if (solid.length === 0) return [outline]
  return ringsDifference([outline], solid).map(withoutIdlePoints).flatMap(apart)
}

/** The rectangle inside the edge. */
export function strip(edge: LosingEdge): Polygon {
  return [edge.from, edge.to, movedIn(edge.to, edge), movedIn(edge.from, edge)]
}

/**
 * What is lost between the ends of two neighbouring strips: two triangles up to the point where the two cuts meet (one
 * kite would cross itself where one strip is much wider), and a disc where they do not meet or an edge is short.
 */
function cornerStrips(before: LosingEdge, after: LosingEdge): readonly Polygon[] {
  const at = after.from
  const widest = Math.max(before.loss, after.loss)
  if (widest === 0) return []
  const meeting = meetingOf(before, after)
  const disc = !meeting || isShortCorner(before, after) ? [discAround(at, widest)] : []
  if (!meeting) return disc
  return [[at, movedIn(at, before), meeting], [at, meeting, movedIn(at, after)], ...disc]
}

/** Off the line by no more than the library's rounding, mm. */
const IDLE: Mm = 0.001

/** A ring that touches itself is parted there by a hair. */
function apart(ring: Polygon): readonly Polygon[] {
  return polygonIsSimple(ring) ? [ring] : ringsOffset([ring], -IDLE, 'mitre').filter(polygonIsSimple)
}

/** Strips of one edge meet in points that the library rounds; they neither turn nor matter. Of two equal points one stays. */
function withoutIdlePoints(ring: Polygon): Polygon {
  const kept: Point[] = []
  for (const [k, point] of ring.entries()) {
    const before = kept.at(-1) ?? (ring.at(-1) as Point)
    const after = (k + 1 < ring.length ? ring[k + 1] : kept[0]) as Point
    if (distanceToSegment(point, before, after) > IDLE) kept.push(point)
  }
  return kept
}
