import { polygonArea } from '../../geometry/polygon.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import type { LosingEdge } from './losing-edge.ts'
import { mitred } from './mitred.ts'
import { distanceToSegment } from './segment.ts'
import { remainder, strip } from './strips.ts'

/** The polygon left over, and for each of its edges the index of the edge it comes from. */
export interface Inset {
  readonly outline: Polygon
  readonly sources: readonly number[]
}

/** Less is no panel, mm²: two postage stamps. */
const LEAST_AREA = 1000

/**
 * What is left when a strip beside every edge is cut off: the largest part if cutting parts the panel, null if
 * nothing worth having is left. The polygon must be simple; the result is simple and counter-clockwise. Cuts run
 * parallel to the edges and meet in sharp corners.
 */
export function inset(edges: readonly LosingEdge[]): Inset | null {
  const quick = mitred(edges)
  const outline = quick ?? largest(remainder(edges))
  if (polygonArea(outline) < LEAST_AREA) return null
  const sourceOfEdge = (from: Point, k: number) =>
    quick ? k : sourceOf(from, outline[(k + 1) % outline.length] as Point, edges)
  return { outline, sources: outline.map(sourceOfEdge) }
}

function largest(rings: readonly Polygon[]): Polygon {
  return rings.reduce((best, ring) => (polygonArea(ring) > polygonArea(best) ? ring : best), [])
}

/** The edge whose cut this edge runs along: the cut nearest to its middle. */
function sourceOf(from: Point, to: Point, edges: readonly LosingEdge[]): number {
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const distances = edges.map((edge) => {
    const [, , b, a] = strip(edge)
    return distanceToSegment(middle, a as Point, b as Point)
  })
  return distances.indexOf(Math.min(...distances))
}
