import type { Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import { fromEdge, type TapeEdge } from './tape-edges.ts'

/** A point of a piece and where it lies on the panel. */
export interface TapePoint {
  readonly at: Point
  /** Square distances from the two tape edges. */
  readonly from: readonly [Mm, Mm]
}

/** Less than this is a curve, not a corner. */
const LEAST_CORNER = Math.cos((25 * Math.PI) / 180)

/**
 * The two points of a laid piece that fix its place and its turn: its two corners farthest apart, as a small error there turns
 * the piece least. A piece without two corners gives the two points of its outline farthest apart.
 */
export function tapePoints(
  outline: Polygon,
  edges: readonly [TapeEdge, TapeEdge],
): readonly [TapePoint, TapePoint] {
  const corners = outline.filter((_, k) => isCorner(outline, k))
  const [a, b] = farthestApart(corners.length >= 2 ? corners : outline)
  const read = (at: Point): TapePoint => ({ at, from: [fromEdge(edges[0], at), fromEdge(edges[1], at)] })
  // The one nearer to both edges first: from there one measures on.
  const [first, second] = [read(a), read(b)]
  return first.from[0] + first.from[1] <= second.from[0] + second.from[1] ? [first, second] : [second, first]
}

function isCorner(outline: Polygon, k: number): boolean {
  const n = outline.length
  const [before, here, after] = [outline[(k + n - 1) % n], outline[k], outline[(k + 1) % n]] as [
    Point,
    Point,
    Point,
  ]
  const [ux, uy] = [here[0] - before[0], here[1] - before[1]]
  const [vx, vy] = [after[0] - here[0], after[1] - here[1]]
  return ux * vx + uy * vy < LEAST_CORNER * Math.hypot(ux, uy) * Math.hypot(vx, vy)
}

function farthestApart(points: readonly Point[]): readonly [Point, Point] {
  let best: readonly [Point, Point] = [points[0] as Point, points[1] as Point]
  let far = 0
  for (const [i, a] of points.entries()) {
    for (const b of points.slice(i + 1)) {
      const distance = Math.hypot(b[0] - a[0], b[1] - a[1])
      // Ties go to the earlier pair whatever the rounding.
      if (distance > far + 1e-6) {
        best = [a, b]
        far = distance
      }
    }
  }
  return best
}
