import { ringsUnion } from '../geometry/clipper.ts'
import { polygonArea } from '../geometry/polygon.ts'
import { polygonIsSimple } from '../geometry/simple.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import type { Side } from './corner.ts'
import { sampledCurve } from './curves.ts'
import type { OutlinePoint } from './pattern.ts'
import { cutCorners } from './turned-up.ts'

/** A nanometre, in mm. */
const IDLE = 1e-6

/**
 * The cut outline of a counter-clockwise seam line: every edge moved out by its own allowance. It covers the true
 * outline and stands off it by no more than CURVE_EXCESS along curves. Where allowances run
 * into one another the result is their union, and a hole they would close is filled.
 */
export function withAllowances(ring: readonly OutlinePoint[]): Polygon {
  const sides = ring.flatMap((point, k) => sidesOf(point, ring[(k + 1) % ring.length] as OutlinePoint))
  const outline = withoutIdlePoints(cutCorners(sides).flat())
  return polygonIsSimple(outline) ? outline : outerRing(outline)
}

/** One edge as straight sides. A curve reaches out by its bulge too, so that no part of it is cut short. */
function sidesOf({ at, curve, allowance, use }: OutlinePoint, next: OutlinePoint): readonly Side[] {
  const folds = use !== undefined
  if (!curve) return [{ from: at, to: next.at, reach: allowance, folds }]
  const { points, bulge } = sampledCurve([at, ...curve, next.at], allowance)
  return points.map((from, k) => ({ from, to: points[k + 1] ?? next.at, reach: allowance + bulge, folds }))
}

/** Loops left at inward corners wind positively, so the union of the crossing ring is the union of all allowances. */
function outerRing(crossing: Polygon): Polygon {
  const rings = ringsUnion([crossing])
  return withoutIdlePoints(
    rings.reduce((best, ring) => (polygonArea(ring) > polygonArea(best) ? ring : best), []),
  )
}

/** Points that neither move on nor turn, to a nanometre, only slow down whoever comes next. */
function withoutIdlePoints(polygon: Polygon): Polygon {
  const kept: Point[] = []
  for (const point of polygon) {
    while (kept.length > 1 && isIdle(kept.at(-2) as Point, kept.at(-1) as Point, point)) kept.pop()
    if (kept.length === 0 || !same(kept.at(-1) as Point, point)) kept.push(point)
  }
  while (kept.length > 2 && isIdle(kept.at(-2) as Point, kept.at(-1) as Point, kept[0] as Point)) kept.pop()
  while (kept.length > 2 && isIdle(kept.at(-1) as Point, kept[0] as Point, kept[1] as Point)) kept.shift()
  return kept
}

function isIdle(a: Point, b: Point, c: Point): boolean {
  if (same(a, b) || same(b, c)) return true
  const length = Math.hypot(c[0] - a[0], c[1] - a[1])
  const ahead = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) > 0
  const off = Math.abs((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / length
  return ahead && off < IDLE
}

function same(a: Point, b: Point): boolean {
  return Math.abs(a[0] - b[0]) < IDLE && Math.abs(a[1] - b[1]) < IDLE
}
