import type { Mm } from '../../base/units.ts'
import type { Outline } from './outline.ts'

/** Part of a segment, as two parameters in [0, 1]. */
export type Span = readonly [number, number]

/**
 * The parts of the segment a→b that are farther than `reach` from the whole boundary of an outline.
 *
 * Distance to one edge is a convex function along a line, so the part of a→b within `reach` of an edge is one
 * span; what no edge's span covers is far from all of them. No crossing is computed: nothing here can be
 * degenerate. A far part crosses no edge, so any point of it tells on which side the whole part lies.
 */
export function farSpans(ax: number, ay: number, bx: number, by: number, far: Outline, reach: Mm): Span[] {
  const near: Span[] = []
  const { xy } = far
  const [lowX, highX] = [Math.min(ax, bx) - reach, Math.max(ax, bx) + reach]
  const [lowY, highY] = [Math.min(ay, by) - reach, Math.max(ay, by) + reach]
  let cx = xy[xy.length - 2] as number
  let cy = xy[xy.length - 1] as number
  for (let i = 0; i < xy.length; i += 2) {
    const dx = xy[i] as number
    const dy = xy[i + 1] as number
    const apart =
      Math.max(cx, dx) < lowX ||
      Math.min(cx, dx) > highX ||
      Math.max(cy, dy) < lowY ||
      Math.min(cy, dy) > highY
    if (!apart) {
      const span = spanNearSegment(ax, ay, bx - ax, by - ay, cx, cy, dx - cx, dy - cy, reach)
      if (span) near.push(span)
    }
    cx = dx
    cy = dy
  }
  return uncovered(near)
}

/** The gaps that spans leave in [0, 1]. */
function uncovered(spans: Span[]): Span[] {
  spans.sort((a, b) => a[0] - b[0])
  const gaps: Span[] = []
  let reached = 0
  for (const [from, to] of spans) {
    if (from > reached) gaps.push([reached, from])
    if (to > reached) reached = to
  }
  if (reached < 1) gaps.push([reached, 1])
  return gaps
}

/** The part of a + t u, t in [0, 1], within `reach` of the segment c + s v, or null: the segment's two end discs and the strip between them. */
function spanNearSegment(
  ax: number,
  ay: number,
  ux: number,
  uy: number,
  cx: number,
  cy: number,
  vx: number,
  vy: number,
  reach: Mm,
): Span | null {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  const take = (from: number, to: number) => {
    const [f, t] = [Math.max(from, 0), Math.min(to, 1)]
    if (f > t) return
    low = Math.min(low, f)
    high = Math.max(high, t)
  }
  inDisc(ax - cx, ay - cy, ux, uy, reach, take)
  inDisc(ax - cx - vx, ay - cy - vy, ux, uy, reach, take)
  const length = Math.hypot(vx, vy)
  if (length > 0) inStrip(ax - cx, ay - cy, ux, uy, vx / length, vy / length, length, reach, take)
  return low > high ? null : [low, high]
}

type Take = (from: number, to: number) => void

/** Where p + t u is within `reach` of the origin. */
function inDisc(px: number, py: number, ux: number, uy: number, reach: Mm, take: Take): void {
  const uu = ux * ux + uy * uy
  if (uu === 0) {
    if (Math.hypot(px, py) <= reach) take(0, 1)
    return
  }
  const middle = -(px * ux + py * uy) / uu
  const missX = px + middle * ux
  const missY = py + middle * uy
  const rest = reach * reach - (missX * missX + missY * missY)
  if (rest < 0) return
  const half = Math.sqrt(rest / uu)
  take(middle - half, middle + half)
}

/** Where p + t u lies over the segment from the origin along the unit vector w and within `reach` of its line. */
function inStrip(
  px: number,
  py: number,
  ux: number,
  uy: number,
  wx: number,
  wy: number,
  length: Mm,
  reach: Mm,
  take: Take,
): void {
  const over = whereBetween(px * wx + py * wy, ux * wx + uy * wy, 0, length)
  const beside = whereBetween(px * wy - py * wx, ux * wy - uy * wx, -reach, reach)
  if (over && beside) take(Math.max(over[0], beside[0]), Math.min(over[1], beside[1]))
}

/** The t for which start + t slope is in [low, high]. */
function whereBetween(start: number, slope: number, low: number, high: number): Span | null {
  if (slope === 0)
    return start >= low && start <= high ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] : null
  const a = (low - start) / slope
  const b = (high - start) / slope
  return a < b ? [a, b] : [b, a]
}
