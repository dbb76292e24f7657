import { ringsArea, ringsDifference, ringsIntersection, ringsUnion } from '../../geometry/clipper.ts'
import { minkowskiSum } from '../../geometry/minkowski.ts'
import { polygonArea, polygonCounterClockwise } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Polygon, Rings } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import { groundOf } from '../engine/confinement.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { areaOf, groundArea, neededItems } from './area.ts'
import { areaSlack, exceeds } from './area-bounds.ts'
import { centred, coreOutline } from './core-outline.ts'
import { coreDomain, type Relaxed } from './relaxed.ts'

/** With less than this share of the ground needed, what pieces cannot reach will hardly decide: not worth the time. */
const LEAST_SHARE = 0.5

/**
 * Lemma: a piece covers only ground that it can reach, its domain ⊕ the piece. So of the k largest of the pieces
 * that may lie in some group of regions only, the area is at most the area that they can reach together there.
 * Necks, spikes and corners that large pieces never reach drop out. Items with ranges of turns are let reach
 * everything.
 */
export function refuteByReach(relaxed: Relaxed): Refutation | null {
  const { problem } = relaxed
  const items = [...neededItems(problem)].sort((a, b) => areaOf(problem, b) - areaOf(problem, a))
  const allowed = items.map((item) =>
    problem.regions.flatMap((_, r) => (relaxed.mayLieIn(item, r) ? [r] : [])),
  )
  for (const group of groupsOf(allowed)) {
    const inGroup = items.filter((_, i) => (allowed[i] as number[]).every((r) => group.includes(r)))
    const refutation = refuteGroup(problem, inGroup, group)
    if (refutation) return refutation
  }
  return null
}

/** The sets of regions allowed to some item, and the unions of two of them and of all. */
function groupsOf(allowed: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const distinct = new Map(allowed.map((list) => [list.join(), list]))
  const pairs = [...distinct.values()].flatMap((a, i, all) => all.slice(i).map((b) => [...a, ...b]))
  const groups = [...pairs, allowed.flat()].map((list) => [...new Set(list)].sort((a, b) => a - b))
  return [...new Map(groups.map((group) => [group.join(), group])).values()]
}

function refuteGroup(
  problem: PackingProblem,
  items: readonly number[],
  regions: readonly number[],
): Refutation | null {
  const ground = regions.reduce((sum, r) => sum + groundArea(problem.regions[r] as Region), 0)
  let needed = 0
  for (const [k, item] of items.entries()) {
    needed += problem.items[item]!.copies * areaOf(problem, item)
    if (needed < LEAST_SHARE * ground) continue
    const largest = items.slice(0, k + 1)
    const available = regions.reduce((sum, r) => sum + reachedArea(problem, largest, r), 0)
    if (!exceeds(needed, available)) continue
    const certificate = { by: 'reach', items: largest, regions } as const
    return { kind: 'area', items: largest, figures: { needed, available }, certificate }
  }
  return null
}

/** Area of the region that the items can reach together, at most. */
function reachedArea(problem: PackingProblem, items: readonly number[], r: number): number {
  const region = problem.regions[r] as Region
  const reaches = items.map((item) => reachOf(problem, item, r))
  if (reaches.includes(null)) return groundArea(region)
  const ground = ringsDifference(
    [polygonCounterClockwise(region.outline)],
    region.forbidden.map(polygonCounterClockwise),
  )
  const covered = ringsIntersection(ringsUnion((reaches as Rings[]).flat()), ground)
  return ringsArea(covered) + areaSlack(covered)
}

/** What the item can cover, and more: the holes of its domain are filled in. null: all of the region, for all that is known. */
function reachOf(problem: PackingProblem, item: number, r: number): Rings | null {
  const outline = centred(problem.items[item]!.outline)
  const reached: Polygon[] = []
  for (const way of problem.items[item]!.ways[r] ?? []) {
    const core = way.tilt === 0 ? coreOutline(outline, way) : null
    if (!core) return null
    const domain = coreDomain(
      groundOf(problem.items[item] as Item, problem.regions[r] as Region),
      core,
    ).filter((ring) => polygonArea(ring) > 0)
    reached.push(...domain.flatMap((ring) => minkowskiSum(ring, polygonOriented(outline, way))))
  }
  return reached
}
