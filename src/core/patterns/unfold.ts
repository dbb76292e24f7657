import type { Mm } from '../base/units.ts'
import type { Point } from '../geometry/types.ts'
import { type Cubic, curveLength } from './curves.ts'
import type { Notch, OutlinePoint, OutlineShape } from './pattern.ts'

/**
 * The whole seam line as a closed ring of points and the edges that leave them, counter-clockwise. A piece on the
 * fold is mirrored over it; the fold itself is no edge any more.
 */
export function seamRing(shape: OutlineShape): readonly OutlinePoint[] {
  const ring = shape.onFold ? unfolded(shape.points) : shape.points
  return windsClockwise(ring) ? reversed(ring) : ring
}

/** The half, then back along its mirror image. The fold runs from the last point to the first. */
function unfolded(half: readonly OutlinePoint[]): readonly OutlinePoint[] {
  const first = half[0] as OutlinePoint
  const last = half[half.length - 1] as OutlinePoint
  const mirror = mirrorOver(last.at, first.at)
  const back = reversed(half)
    .slice(0, -1)
    .map(
      (point): OutlinePoint => ({
        ...point,
        at: mirror(point.at),
        ...(point.curve && { curve: [mirror(point.curve[0]), mirror(point.curve[1])] }),
      }),
    )
  return [...half.slice(0, -1), ...back]
}

/** The same ring run the other way; it starts at the last point, and its last edge is the old last edge. */
function reversed(ring: readonly OutlinePoint[]): readonly OutlinePoint[] {
  return ring.map((_, k) => {
    const at = ring.length - 1 - k
    const edge = ring[(at + ring.length - 1) % ring.length] as OutlinePoint
    const end = ring[at] as OutlinePoint
    return {
      ...edge,
      at: end.at,
      ...(edge.curve && { curve: [edge.curve[1], edge.curve[0]] as const }),
      ...(edge.notches && { notches: turned(edge.notches, edgeLength(edge, end)) }),
    }
  })
}

/** Notches of an edge of this length, told from its other end. */
function turned(notches: readonly Notch[], length: Mm): readonly Notch[] {
  return notches.map(({ at, count }) => ({ at: Math.max(0, length - at), count })).reverse()
}

/** The edge from one point of a seam line to the next; a straight one has its control points at its thirds. */
export function edgeFrom({ at, curve }: OutlinePoint, next: OutlinePoint): Cubic {
  if (curve) return [at, ...curve, next.at]
  const [dx, dy] = [(next.at[0] - at[0]) / 3, (next.at[1] - at[1]) / 3]
  return [at, [at[0] + dx, at[1] + dy], [next.at[0] - dx, next.at[1] - dy], next.at]
}

/** Length of the edge from one point of a seam line to the next. */
export function edgeLength(point: OutlinePoint, next: OutlinePoint): Mm {
  return curveLength(edgeFrom(point, next))
}

function mirrorOver(a: Point, b: Point): (point: Point) => Point {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const ux = (b[0] - a[0]) / length
  const uy = (b[1] - a[1]) / length
  return ([x, y]) => {
    const along = 2 * ((x - a[0]) * ux + (y - a[1]) * uy)
    return [2 * a[0] - x + along * ux, 2 * a[1] - y + along * uy]
  }
}

/** By the exact area under each cubic edge (a straight edge has its control points at its thirds). */
function windsClockwise(ring: readonly OutlinePoint[]): boolean {
  const twice = ring.reduce((sum, { at: a, curve }, k) => {
    const d = (ring[(k + 1) % ring.length] as OutlinePoint).at
    if (!curve) return sum + crossOf(a, d)
    const [b, c] = curve
    // Twice the area of ∮ x dy − y dx over a cubic Bézier, from its control points.
    const edge =
      6 * crossOf(a, b) +
      3 * crossOf(a, c) +
      crossOf(a, d) +
      3 * crossOf(b, c) +
      3 * crossOf(b, d) +
      6 * crossOf(c, d)
    return sum + edge / 10
  }, 0)
  return twice < 0
}

function crossOf(a: Point, b: Point): number {
  return a[0] * b[1] - a[1] * b[0]
}
