import type { Point, Polygon } from '../geometry/types.ts'
import { withAllowances } from './allowance.ts'
import { startsStraightHem } from './hem-edges.ts'
import type { OutlinePoint, PieceShape } from './pattern.ts'
import { seamRing } from './unfold.ts'

/** A piece cut without its hem allowance: it takes over a hem that the cloth has. */
export interface OwnHem {
  readonly outline: Polygon
  /** The edge of the outline, from this point to the next, that lies on the fold of that hem. */
  readonly edge: number
}

/** Off a line by no more than this is on it, mm. */
const ON_LINE = 1e-6

/**
 * The cut outline for a piece whose hem is the garment's own: nothing is allowed beyond its longest straight hem edge,
 * unfolded and with its neighbours in one line. null if it has no straight hem, or more hem in that line than one edge.
 * The shape must be free of faults (shapeFaults).
 */
export function ownHem(shape: PieceShape): OwnHem | null {
  if (shape.form !== 'outline') return null
  const ring = seamRing(shape)
  const edges = ring.map((point, k) => ({ point, to: (ring[(k + 1) % ring.length] as OutlinePoint).at }))
  const hems = edges.filter(({ point }) => startsStraightHem(point))
  const longest = hems.reduce<(typeof hems)[number] | null>(
    (best, edge) => (best && length(best.point.at, best.to) >= length(edge.point.at, edge.to) ? best : edge),
    null,
  )
  if (!longest) return null
  const onLine = (p: Point) => distanceToLine(p, longest.point.at, longest.to) < ON_LINE
  const inLine = hems.filter(({ point, to }) => onLine(point.at) && onLine(to))
  const bare = edges.map(({ point }) =>
    inLine.some((edge) => edge.point === point) ? { ...point, allowance: 0 } : point,
  )
  const outline = withAllowances(bare)
  const ends = inLine.flatMap(({ point, to }) => [point.at, to])
  const edge = outline.findIndex((from, k) => {
    const to = outline[(k + 1) % outline.length] as Point
    return onLine(from) && onLine(to) && ends.every((end) => isBetween(end, from, to))
  })
  return edge < 0 ? null : { outline, edge }
}

/** How deep the allowance is that its own hem saves; 0 if it can have none. */
export function hemSaved(shape: PieceShape): number {
  if (shape.form !== 'outline' || !ownHem(shape)) return 0
  return Math.max(...shape.points.map((point) => (startsStraightHem(point) ? point.allowance : 0)))
}

function length(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1])
}

function distanceToLine(p: Point, a: Point, b: Point): number {
  return Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length(a, b)
}

/** Of a point on the line through both. */
function isBetween(p: Point, a: Point, b: Point): boolean {
  return (p[0] - a[0]) * (p[0] - b[0]) + (p[1] - a[1]) * (p[1] - b[1]) <= ON_LINE
}
