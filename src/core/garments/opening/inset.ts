import type { Mm } from '../../base/units.ts'
import { ringsDifference, ringsOffset } from '../../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../../geometry/polygon.ts'
import { polygonIsSimple } from '../../geometry/simple.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import { discAround } from '../disc.ts'

/** An edge of a counter-clockwise polygon and the strip to lose beside it, on the inside. */
export interface LosingEdge {
  readonly from: Point
  readonly to: Point
  readonly loss: Mm
}

/** The polygon left over, and for each of its edges the index of the edge it comes from. */
export interface Inset {
  readonly outline: Polygon
  readonly sources: readonly number[]
}

/** A corner's strip ends where the two cuts meet, unless that is farther off than this many times the wider strip: then it is round. */
const MITRE_LIMIT = 4

/** Less is no panel, mm²: two postage stamps. */
const LEAST_AREA = 1000

/**
 * What is left when a strip beside every edge is cut off: the largest part if cutting parts the panel, null if
 * nothing worth having is left. The polygon must be simple; the result is simple and counter-clockwise. Cuts run
 * parallel to the edges and meet in sharp corners.
 */
export function inset(edges: readonly LosingEdge[]): Inset | null {
  const outline = edges.map((edge) => edge.from)
  const left = remainder(outline, edges)
  const largest = left.reduce((best, ring) => (polygonArea(ring) > polygonArea(best) ? ring : best), [])
  if (polygonArea(largest) < LEAST_AREA) return null
  return {
    outline: largest,
    sources: largest.map((from, k) => sourceOf(from, largest[(k + 1) % largest.length] as Point, edges)),
  }
}

/** Everything left, in parts. */
export function remainder(outline: Polygon, edges: readonly LosingEdge[]): readonly Polygon[] {
  const strips = edges.flatMap((edge, k) => {
    if (edge.loss === 0 && (edges[(k + 1) % edges.length] as LosingEdge).loss === 0) return []
    return [strip(edge), ...corner(edge, edges[(k + 1) % edges.length] as LosingEdge)]
  })
  const solid = strips.filter((ring) => polygonArea(ring) !== 0).map(polygonCounterClockwise)
  if (solid.length === 0) return [outline]
  return ringsDifference([outline], solid).map(withoutIdlePoints).flatMap(apart)
}

/** A ring that touches itself is parted there by a hair. */
function apart(ring: Polygon): readonly Polygon[] {
  return polygonIsSimple(ring) ? [ring] : ringsOffset([ring], -IDLE, 'mitre').filter(polygonIsSimple)
}

/** Off the line by no more than the library's rounding, mm. */
const IDLE: Mm = 0.001

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

/** The rectangle inside the edge. */
function strip({ from, to, loss }: LosingEdge): Polygon {
  const [nx, ny] = inward({ from, to, loss })
  return [from, to, [to[0] + nx * loss, to[1] + ny * loss], [from[0] + nx * loss, from[1] + ny * loss]]
}

/**
 * What is lost between the ends of two neighbouring strips: two triangles up to the point where the two cuts meet (one
 * kite would cross itself where one strip is much wider), or a disc if they meet far off or one edge is shorter than the
 * other's strip is wide, so that more than the neighbour lies within it.
 */
function corner(before: LosingEdge, after: LosingEdge): readonly Polygon[] {
  const [n1, n2] = [inward(before), inward(after)]
  const at = after.from
  const end1: Point = [at[0] + n1[0] * before.loss, at[1] + n1[1] * before.loss]
  const end2: Point = [at[0] + n2[0] * after.loss, at[1] + n2[1] * after.loss]
  const sine = n1[0] * n2[1] - n1[1] * n2[0]
  // The meeting point m solves m·n1 = loss1 and m·n2 = loss2, counted from the corner.
  const mx = (before.loss * n2[1] - after.loss * n1[1]) / sine
  const my = (after.loss * n1[0] - before.loss * n2[0]) / sine
  const widest = Math.max(before.loss, after.loss)
  const meets = Math.abs(sine) > 1e-9 && Math.hypot(mx, my) <= MITRE_LIMIT * widest
  const short = lengthOf(before) < after.loss || lengthOf(after) < before.loss
  const disc = short || !meets ? [discAround(at, widest)] : []
  const meeting: Point = [at[0] + mx, at[1] + my]
  const kite: readonly Polygon[] = [
    [at, end1, meeting],
    [at, meeting, end2],
  ]
  return meets ? [...kite, ...disc] : disc
}

/** The edge whose cut this edge runs along: the cut nearest to its middle. */
function sourceOf(from: Point, to: Point, edges: readonly LosingEdge[]): number {
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  let best = 0
  let least = Number.POSITIVE_INFINITY
  edges.forEach((edge, k) => {
    const [, , b, a] = strip(edge)
    const distance = distanceToSegment(middle, a as Point, b as Point)
    if (distance < least) {
      least = distance
      best = k
    }
  })
  return best
}

/** Unit normal to the left of the edge. */
function inward(edge: LosingEdge): Point {
  const { from, to } = edge
  const length = lengthOf(edge)
  return [-(to[1] - from[1]) / length, (to[0] - from[0]) / length]
}

function lengthOf({ from, to }: LosingEdge): Mm {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}

function distanceToSegment(p: Point, a: Point, b: Point): Mm {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  const share = square === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square
  const t = Math.min(1, Math.max(0, share))
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
}
