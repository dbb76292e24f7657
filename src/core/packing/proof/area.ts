import type { Mm } from '../../base/units.ts'
import {
  ringsArea,
  ringsDifference,
  ringsIntersection,
  ringsOffset,
  ringsUnion,
} from '../../geometry/clipper.ts'
import { minkowskiSum } from '../../geometry/minkowski.ts'
import { polygonArea, polygonCounterClockwise, polygonPerimeter } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Polygon, Rings } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { centred, coreOutline } from './core-outline.ts'
import { coreDomain, type Relaxed } from './relaxed.ts'

/** What the polygon library's rounding may cost or give along a boundary: 0.2 µm, twice its grid. */
const ROUNDING: Mm = 0.0002

/** Share by which sums of exact areas are distrusted: rounding of doubles over some thousand points. */
const DOUBLE_NOISE = 1e-11

/**
 * Lemma: pieces that do not overlap cover at most the area there is. With a clearance c, pieces grown by c/2 do
 * not overlap either, and lie in the regions grown by c/2, whose area is at most A + L c/2 + π (c/2)² (Steiner).
 */
export function refuteByArea(problem: PackingProblem): Refutation | null {
  const items = neededItems(problem)
  const used = problem.regions.filter((_, r) => items.some((i) => problem.items[i]!.ways[r]!.length > 0))
  const half = problem.clearance / 2
  const needed = sum(items.map((i) => problem.items[i]!.copies * grownArea(problem.items[i]!.outline, half)))
  const available = sum(used.map((region) => groundArea(region) + grownBy(region, half)))
  return needed * (1 - DOUBLE_NOISE) > available * (1 + DOUBLE_NOISE)
    ? { kind: 'area', items, figures: { needed, available } }
    : null
}

/** Indices of the items that must be placed. */
export function neededItems({ items }: PackingProblem): readonly number[] {
  return items.flatMap((item, i) => (item.optional ? [] : [i]))
}

/** Area of the outline grown by `margin`, at most: arcs are cut short and rounding is taken off. */
function grownArea(outline: Polygon, margin: Mm): number {
  const plain = Math.abs(polygonArea(outline))
  if (margin === 0) return plain
  const grown = ringsOffset([polygonCounterClockwise(outline)], margin, 'round')
  return Math.max(plain, ringsArea(grown) - slack(grown))
}

/** How much growing a region by `margin` adds at most. */
function grownBy({ outline, forbidden }: Region, margin: Mm): number {
  if (margin === 0) return 0
  const boundary = polygonPerimeter(outline) + sum(forbidden.map(polygonPerimeter))
  return boundary * margin + (1 + forbidden.length) * Math.PI * margin * margin
}

/** Area of a region without its forbidden areas, at most: exact where there are none. */
export function groundArea({ outline, forbidden }: Region): number {
  const whole = Math.abs(polygonArea(outline))
  if (forbidden.length === 0) return whole
  const lost = ringsIntersection(ringsUnion(forbidden.map(polygonCounterClockwise)), [
    polygonCounterClockwise(outline),
  ])
  return whole - Math.max(0, ringsArea(lost) - slack(lost))
}

/** What rounding may have changed in an area that the polygon library computed. */
function slack(rings: Rings): number {
  return sum(rings.map(polygonPerimeter)) * ROUNDING + ROUNDING * ROUNDING * rings.length
}

/**
 * Sharper: a piece covers only ground that it can reach, its domain ⊕ the piece. For the k largest of the pieces
 * that may lie in some group of regions only: their area is at most the area that they can reach together there.
 * Necks, spikes and corners that large pieces never reach drop out. `relaxed` must hold discrete turns exactly:
 * items with ranges of turns reach everything.
 */
export function refuteByReach(relaxed: Relaxed): Refutation | null {
  const { problem } = relaxed
  const items = [...neededItems(problem)].sort((a, b) => areaOf(problem, b) - areaOf(problem, a))
  const allowed = items.map((item) =>
    problem.regions.flatMap((_, r) => (relaxed.mayLieIn(item, r) ? [r] : [])),
  )
  for (const group of groupsOf(allowed)) {
    const inGroup = items.filter((_, i) => (allowed[i] as number[]).every((r) => group.has(r)))
    const refutation = refuteGroup(relaxed, inGroup, [...group])
    if (refutation) return refutation
  }
  return null
}

function areaOf({ items }: PackingProblem, item: number): number {
  return Math.abs(polygonArea((items[item] as Item).outline))
}

/** Unions of the regions allowed to an item and to those allowed less. */
function groupsOf(allowed: readonly (readonly number[])[]): readonly ReadonlySet<number>[] {
  const distinct = new Map(allowed.map((list) => [list.join(), list]))
  const pairs = [...distinct.values()].flatMap((a, i, all) => all.slice(i).map((b) => [...a, ...b]))
  const groups = [...pairs, allowed.flat()].map((list) => [...new Set(list)].sort((a, b) => a - b))
  return [...new Map(groups.map((group) => [group.join(), group])).values()].map((group) => new Set(group))
}

function refuteGroup(
  relaxed: Relaxed,
  items: readonly number[],
  regions: readonly number[],
): Refutation | null {
  const { problem } = relaxed
  const grounds = regions.map((r) => groundRings(problem.regions[r] as Region))
  const reached: Rings[] = regions.map(() => [])
  let needed = 0
  for (const [k, item] of items.entries()) {
    needed += problem.items[item]!.copies * areaOf(problem, item)
    regions.forEach((r, g) => {
      reached[g] = ringsUnion([...(reached[g] as Rings), ...reachOf(relaxed, item, r, grounds[g] as Rings)])
    })
    const covered = reached.map((rings, g) => ringsIntersection(rings, grounds[g] as Rings))
    const available = sum(covered.map((rings) => ringsArea(rings) + slack(rings)))
    if (needed > available)
      return { kind: 'area', items: items.slice(0, k + 1), figures: { needed, available } }
  }
  return null
}

function groundRings({ outline, forbidden }: Region): Rings {
  return ringsDifference([polygonCounterClockwise(outline)], forbidden.map(polygonCounterClockwise))
}

/** What the item can cover of the region, at least; the holes of its domain are filled in. */
function reachOf({ problem }: Relaxed, item: number, region: number, ground: Rings): Rings {
  const outline = centred(problem.items[item]!.outline)
  return (problem.items[item]!.ways[region] ?? []).flatMap((way) => {
    const core = way.tilt === 0 ? coreOutline(outline, way) : null
    if (!core) return ground
    const domain = coreDomain(problem.regions[region] as Region, core)
    return domain.filter(isOuter).flatMap((ring) => minkowskiSum(ring, polygonOriented(outline, way)))
  })
}

function isOuter(ring: Polygon): boolean {
  return polygonArea(ring) > 0
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
