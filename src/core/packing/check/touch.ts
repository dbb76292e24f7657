import type { Mm } from '../../base/units.ts'
import { farSpans } from './boundary.ts'
import { boundsNear, type Outline, outlineDistance, outlineHolds } from './outline.ts'

/*
 * "Deeper than t": a point is deep in a set when it is in it and farther than t from its boundary.
 *
 * Lemma. Let no boundary point of A be deep in B and none of B deep in A. Then each connected part of what is
 * deep in A lies wholly inside B or wholly outside it, since no boundary point of B is there. So one point of
 * each such part decides whether A and B share ground. Pieces that touch truly have no deep boundary points at
 * all, and moving one by e makes none deeper than e: touching lays are never refused.
 */

/** True if two outlines share ground deeper than `tolerance` anywhere. */
export function overlapDeeply(a: Outline, b: Outline, tolerance: Mm): boolean {
  if (!boundsNear(a, b, 0)) return false
  return (
    boundaryReaches(a, b, tolerance, true) ||
    boundaryReaches(b, a, tolerance, true) ||
    deepPoints(a, tolerance).some(([x, y]) => deepIn(b, x, y, tolerance)) ||
    deepPoints(b, tolerance).some(([x, y]) => deepIn(a, x, y, tolerance))
  )
}

/** True if `inner` lies in `outer`, nowhere outside by more than `tolerance`. */
export function liesWithin(inner: Outline, outer: Outline, tolerance: Mm): boolean {
  return (
    !boundaryReaches(inner, outer, tolerance, false) &&
    !boundaryReaches(outer, inner, tolerance, true) &&
    deepPoints(inner, tolerance).every(
      ([x, y]) => outlineHolds(outer, x, y) || outlineDistance(outer, x, y) <= tolerance,
    )
  )
}

/** True if the boundaries come closer than `distance`, or one outline lies in the other. */
export function closerThan(a: Outline, b: Outline, distance: Mm): boolean {
  if (!boundsNear(a, b, distance)) return false
  return (
    comesWithin(a, b, distance) ||
    outlineHolds(b, a.xy[0] as number, a.xy[1] as number) ||
    outlineHolds(a, b.xy[0] as number, b.xy[1] as number)
  )
}

/** True if some boundary point of `a`, farther than `reach` from b's boundary, is inside `b` (or outside it, if not `inside`). */
function boundaryReaches(a: Outline, b: Outline, reach: Mm, inside: boolean): boolean {
  const { xy } = a
  let ax = xy[xy.length - 2] as number
  let ay = xy[xy.length - 1] as number
  for (let i = 0; i < xy.length; i += 2) {
    const bx = xy[i] as number
    const by = xy[i + 1] as number
    for (const [from, to] of farSpans(ax, ay, bx, by, b, reach)) {
      const t = (from + to) / 2
      if (outlineHolds(b, ax + t * (bx - ax), ay + t * (by - ay)) === inside) return true
    }
    ax = bx
    ay = by
  }
  return false
}

/** True if some boundary point of `a` is within `reach` of b's boundary. */
function comesWithin(a: Outline, b: Outline, reach: Mm): boolean {
  const { xy } = a
  let ax = xy[xy.length - 2] as number
  let ay = xy[xy.length - 1] as number
  for (let i = 0; i < xy.length; i += 2) {
    const bx = xy[i] as number
    const by = xy[i + 1] as number
    const [first] = farSpans(ax, ay, bx, by, b, reach)
    if (!first || first[0] > 0 || first[1] < 1) return true
    ax = bx
    ay = by
  }
  return false
}

function deepIn(outline: Outline, x: number, y: number, tolerance: Mm): boolean {
  return outlineHolds(outline, x, y) && outlineDistance(outline, x, y) > tolerance
}

/** How many points stand for an outline's inside. More than one only matters to outlines with necks thinner than twice the tolerance. */
const POINTS_KEPT = 8

/**
 * The points deepest inside among the middles of the slabs that the corners' heights cut an outline into.
 * Nothing in an outline so thin that no such point is deep.
 */
function deepPoints(outline: Outline, tolerance: Mm): readonly (readonly [number, number])[] {
  const found = deepCache.get(outline)
  if (found) return found
  const points = slabMiddles(outline)
    .map(([x, y]) => ({ x, y, depth: outlineDistance(outline, x, y) }))
    .filter((point) => point.depth > tolerance)
    .sort((a, b) => b.depth - a.depth)
    .slice(0, POINTS_KEPT)
    .map(({ x, y }) => [x, y] as const)
  deepCache.set(outline, points)
  return points
}

const deepCache = new WeakMap<Outline, readonly (readonly [number, number])[]>()

/** The middle of every inside stretch of the horizontal line halfway between each two neighbouring corner heights. */
function slabMiddles({ xy }: Outline): [number, number][] {
  const heights = [...new Set(Array.from(xy).filter((_, i) => i % 2 === 1))].sort((a, b) => a - b)
  return heights.slice(1).flatMap((top, i) => {
    const y = ((heights[i] as number) + top) / 2
    const cuts = cutsAt(xy, y)
    const middles: [number, number][] = []
    for (let k = 0; k + 1 < cuts.length; k += 2)
      middles.push([((cuts[k] as number) + (cuts[k + 1] as number)) / 2, y])
    return middles
  })
}

/** Where the horizontal line at y crosses the outline, from left to right. */
function cutsAt(xy: Float64Array, y: number): number[] {
  const cuts: number[] = []
  let ax = xy[xy.length - 2] as number
  let ay = xy[xy.length - 1] as number
  for (let i = 0; i < xy.length; i += 2) {
    const bx = xy[i] as number
    const by = xy[i + 1] as number
    if (ay <= y !== by <= y) cuts.push(ax + ((y - ay) / (by - ay)) * (bx - ax))
    ax = bx
    ay = by
  }
  return cuts.sort((a, b) => a - b)
}
