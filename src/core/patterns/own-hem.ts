import type { Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import { withAllowances } from './allowance.ts'
import { flushAt } from './flush.ts'
import { hasLowerEdge, startsStraightHem } from './hem-edges.ts'
import type { OutlinePoint, PieceShape } from './pattern.ts'
import { halfMoonOutline, straightCorners } from './simple-shapes.ts'
import { stripFlat } from './strip.ts'
import { seamRing } from './unfold.ts'

/** A piece cut without its hem allowance: it takes over a hem that the cloth has. */
export interface OwnHem {
  readonly outline: Polygon
  /** The edge of the outline, from this point to the next, that lies on the fold of that hem. */
  readonly edge: number
}

/** An edge of the seam line, from its point to the next. */
interface HemEdge {
  readonly point: OutlinePoint
  readonly to: Point
}

/** Off a line by no more than this is on it, mm. */
const ON_LINE = 1e-6

/**
 * The cut outline for a piece whose hem is the garment's own: nothing is allowed beyond its longest straight hem edge,
 * unfolded and with its neighbours in one line, and the seams beside it end on that line. A plain shape takes its lower edge
 * for it. null if it has no straight hem, more hem in that line than one edge, or a hem beside it that would have to go too.
 * The shape must be free of faults (shapeFaults).
 */
export function ownHem(shape: PieceShape): OwnHem | null {
  if (shape.form === 'half-moon') return lowestEdge(halfMoonOutline(shape, shape.allowance, 0))
  const ring = ringOf(shape)
  if (!ring) return null
  const edges = ring.map(
    (point, k): HemEdge => ({ point, to: (ring[(k + 1) % ring.length] as OutlinePoint).at }),
  )
  const hems = edges.filter(({ point }) => startsStraightHem(point))
  const longest = hems.reduce<HemEdge | null>(
    (best, edge) => (best && length(best.point.at, best.to) >= length(edge.point.at, edge.to) ? best : edge),
    null,
  )
  if (!longest) return null
  const onLine = (p: Point) => distanceToLine(p, longest.point.at, longest.to) < ON_LINE
  const onInnerSide = (p: Point) => sideOf(p, longest.point.at, longest.to) > -ON_LINE
  const inLine = hems.filter(({ point, to }) => onLine(point.at) && onLine(to)).map(({ point }) => point)
  const bare = ring.map((point) => (inLine.includes(point) ? { ...point, allowance: 0 } : point))
  const outline = withAllowances(bare)
  const ends = edges.filter(({ point }) => inLine.includes(point)).flatMap(({ point, to }) => [point.at, to])
  const edge = outline.findIndex((from, k) => {
    const to = outline[(k + 1) % outline.length] as Point
    return onLine(from) && onLine(to) && ends.every((end) => isBetween(end, from, to))
  })
  return edge < 0 ? null : flushAt(outline, edge, pokeAllowed(edges, inLine, onInnerSide))
}

/** How deep the allowance is that its own hem saves; 0 if it can have none. */
export function hemSaved(shape: PieceShape): Mm {
  if (!ownHem(shape)) return 0
  if (shape.form === 'circle') return 0
  if (shape.form === 'strip') return shape.sideAllowance
  if (shape.form !== 'outline') return shape.allowance
  return Math.max(...shape.points.map((point) => (startsStraightHem(point) ? point.allowance : 0)))
}

/** The seam line of a shape with straight edges, the lower edge of a plain one as its hem. */
function ringOf(shape: PieceShape): readonly OutlinePoint[] | null {
  if (shape.form === 'outline') return seamRing(shape)
  if (!hasLowerEdge(shape) || shape.form === 'circle' || shape.form === 'half-moon') return null
  const strip = shape.form === 'strip'
  const corners = straightCorners(strip ? { form: 'box', ...stripFlat(shape), allowance: 0 } : shape)
  return corners.map((at, k): OutlinePoint => {
    const allowance = strip ? (k % 2 === 0 ? shape.sideAllowance : shape.endAllowance) : shape.allowance
    return k === 0 ? { at, allowance, use: 'hem' } : { at, allowance }
  })
}

/**
 * How far the seams beside the hem may stand out beyond its line, to be cut off there: by their allowance, on sides that
 * slant. Another hem or casing, or a piece that itself reaches beyond the line, is not to be cut.
 */
function pokeAllowed(
  edges: readonly HemEdge[],
  inLine: readonly OutlinePoint[],
  onInnerSide: (p: Point) => boolean,
): Mm {
  const beside = edges.filter(({ point }, k) => {
    const [before, after] = [edges.at(k - 1), edges[(k + 1) % edges.length]] as [HemEdge, HemEdge]
    return !inLine.includes(point) && (inLine.includes(before.point) || inLine.includes(after.point))
  })
  const cut = beside.map(({ point: { at, curve = [], allowance, use }, to }) =>
    use === undefined && [at, ...curve, to].every(onInnerSide) ? allowance : 0,
  )
  return Math.max(0, ...cut)
}

function lowestEdge(outline: Polygon): OwnHem {
  const lowest = Math.min(...outline.map(([, y]) => y))
  const isLow = (point: Point | undefined) => point !== undefined && point[1] - lowest < ON_LINE
  const edge = outline.findIndex((point, k) => isLow(point) && isLow(outline[(k + 1) % outline.length]))
  return { outline, edge }
}

function length(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1])
}

function distanceToLine(p: Point, a: Point, b: Point): Mm {
  return Math.abs(sideOf(p, a, b))
}

/** How far to the left of the line from a to b. */
function sideOf(p: Point, a: Point, b: Point): Mm {
  return ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length(a, b)
}

/** Of a point on the line through both. */
function isBetween(p: Point, a: Point, b: Point): boolean {
  return (p[0] - a[0]) * (p[0] - b[0]) + (p[1] - a[1]) * (p[1] - b[1]) <= ON_LINE
}
