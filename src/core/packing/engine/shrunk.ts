import type { Mm } from '../../base/units.ts'
import { polygonCounterClockwise } from '../../geometry/polygon.ts'
import type { Point, Polygon } from '../../geometry/types.ts'

/**
 * The outline with every edge drawn in by `inset`, wound counter-clockwise. Pieces that fit exactly (a peg in its
 * hole, a jigsaw) have feasible sets of no area, which polygon booleans lose; drawn in by a thousandth of a
 * millimetre or two they have some. No corner moves by more than 2 × `inset`, so a lay of shrunk outlines is a
 * lay of the true ones to within 4 × `inset` (two sharp tips against each other), `inset` + `inset` along edges.
 *
 * Meant for insets far below the size of any feature: corners move, none is added or dropped.
 */
export function shrunk(polygon: Polygon, inset: Mm): Polygon {
  const outline = polygonCounterClockwise(polygon)
  return outline.map((point, i) => {
    const before = outline.at(i - 1) as Point
    const after = outline[(i + 1) % outline.length] as Point
    return drawnIn(before, point, after, inset)
  })
}

/** One corner moved along its mitre. */
function drawnIn(before: Point, [x, y]: Point, after: Point, inset: Mm): Point {
  const inX = x - before[0]
  const inY = y - before[1]
  const outX = after[0] - x
  const outY = after[1] - y
  const inLength = Math.hypot(inX, inY) || 1
  const outLength = Math.hypot(outX, outY) || 1
  // Inward normals of a counter-clockwise outline are to the left of its edges.
  const sumX = -inY / inLength - outY / outLength
  const sumY = inX / inLength + outX / outLength
  const length = Math.hypot(sumX, sumY)
  if (length < 1e-6) return [x, y]
  // |n1 + n2| = 2 cos(half the turn), and the mitre is inset / cos(half the turn).
  const distance = Math.min((2 * inset) / length, 2 * inset)
  return [x + (sumX / length) * distance, y + (sumY / length) * distance]
}
