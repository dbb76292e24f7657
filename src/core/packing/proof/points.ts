import { ringsDifference } from '../../geometry/clipper.ts'
import { polygonNegated } from '../../geometry/minkowski.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import { polygonMoved } from '../../geometry/transform.ts'
import type { Box, Point, Polygon } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import { groundOf } from '../engine/confinement.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { areaOf, neededItems } from './area.ts'
import { centred } from './core-outline.ts'
import { coreDomain } from './relaxed.ts'
import { provedInEveryTurn } from './turns.ts'

/**
 * Lemma: if every allowed placement of some items in a region holds one of m points inside it, at most m of their
 * copies fit there, since pieces that do not overlap have no inside point in common (unavoidable points:
 * Friedman, "Packing unit squares in squares", Electronic Journal of Combinatorics, dynamic survey 7). With more
 * copies than points in all regions together there is no packing. Points are tried in rows and columns set in
 * evenly from the region's bounds. Holds for any turn; the clearance is not used.
 *
 * A generator that pauses now and then; `null` when it has found no proof.
 */
export function* refuteByPoints(problem: PackingProblem): Generator<void, Refutation | null> {
  const items = [...neededItems(problem)].sort((a, b) => areaOf(problem, b) - areaOf(problem, a))
  for (let kinds = 1; kinds <= items.length; kinds++) {
    const group = items.slice(0, kinds)
    const copies = group.reduce((sum, i) => sum + (problem.items[i] as Item).copies, 0)
    if (copies < 2) continue
    const points = yield* pointsThatCount(problem, group, copies - 1)
    if (points === null) continue
    const most = points.flat().length
    const certificate = { by: 'points', items: group, points } as const
    return { kind: 'group', items: group, figures: { copies, most }, certificate }
  }
  return null
}

/** More points than this are not tried: each costs time, and the method is for few large pieces. */
const MOST_POINTS = 16

/** Points in each region, at most `below` in all, of which every placement covers one: so many copies fit at most. Or null. */
function* pointsThatCount(
  problem: PackingProblem,
  group: readonly number[],
  below: number,
): Generator<void, readonly (readonly Point[])[] | null> {
  if (below > MOST_POINTS) return null
  const found: (readonly Point[])[] = []
  for (const r of problem.regions.keys()) {
    const inRegion = yield* pointsOfRegion(problem, group, r, below - found.flat().length)
    if (inRegion === null) return null
    found.push(inRegion)
  }
  return found
}

function* pointsOfRegion(
  problem: PackingProblem,
  group: readonly number[],
  r: number,
  most: number,
): Generator<void, readonly Point[] | null> {
  const region = problem.regions[r] as Region
  for (let count = 0; count <= most; count++)
    for (const points of lattices(polygonBox(region.outline), count))
      if (yield* unavoidable(problem, group, r, points)) return points
  return null
}

/** True if every placement of every item of the group in the region has one of the points inside it. */
function* unavoidable(
  problem: PackingProblem,
  group: readonly number[],
  r: number,
  points: readonly Point[],
): Generator<void, boolean> {
  const region = problem.regions[r] as Region
  for (const i of group) {
    const item = problem.items[i] as Item
    const { outline, ways } = item
    const ground = groundOf(item, region)
    const holds = (core: Polygon) => coversSome(ground, core, points)
    if (!(yield* provedInEveryTurn(centred(outline), ways[r] ?? [], holds))) return false
  }
  return true
}

/** True if every translation that keeps the core in the region brings one of the points inside it. */
function coversSome(region: Region, core: Polygon, points: readonly Point[]): boolean {
  const domain = coreDomain(region, core)
  if (domain.length === 0) return true
  const inverse = polygonNegated(core)
  return (
    ringsDifference(
      domain,
      points.map(([x, y]) => polygonMoved(inverse, x, y)),
    ).length === 0
  )
}

/** How far the outermost points of a square arrangement are set in, as shares of the region's bounds, after the even share. */
const INSETS = Array.from({ length: 27 }, (_, i) => 0.24 + i * 0.01)

/** Ways to place `count` points in rows and columns; one empty list for none. */
function* lattices(box: Box, count: number): Generator<readonly Point[]> {
  if (count === 0) yield []
  for (let columns = 1; columns <= count; columns++) {
    if (count % columns !== 0) continue
    const rows = count / columns
    yield lattice(box, columns, rows, 1 / (columns + 1), 1 / (rows + 1))
    if (columns === rows && count > 1)
      for (const inset of INSETS) yield lattice(box, columns, rows, inset, inset)
  }
}

function lattice(box: Box, columns: number, rows: number, insetX: number, insetY: number): readonly Point[] {
  const xs = spread(box.minX, box.maxX, columns, insetX)
  const ys = spread(box.minY, box.maxY, rows, insetY)
  return xs.flatMap((x) => ys.map((y): Point => [x, y]))
}

/** `count` places between two bounds, the outermost set in by a share of the distance. */
function spread(low: number, high: number, count: number, inset: number): readonly number[] {
  if (count === 1) return [(low + high) / 2]
  const first = low + inset * (high - low)
  const step = ((high - low) * (1 - 2 * inset)) / (count - 1)
  return Array.from({ length: count }, (_, i) => first + i * step)
}
