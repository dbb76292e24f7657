import type { Slices } from '../../base/slices.ts'
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

/** More groups of regions than this are not looked at, nor is a group that would bring the polygon operations above that. */
const MOST_GROUPS = 200
const MOST_OPERATIONS = 4000

/**
 * Lemma: a piece covers only ground that it can reach, its domain ⊕ the piece. So of the k largest of the pieces
 * that may lie in some group of regions only, the area is at most the area that they can reach together there.
 * Necks, spikes and corners that large pieces never reach drop out. Items with ranges of turns are let reach
 * everything. Pauses at every piece and region.
 */
export function* refuteByReach(relaxed: Relaxed): Slices<Refutation | null> {
  const { problem } = relaxed
  const items = [...neededItems(problem)].sort((a, b) => areaOf(problem, b) - areaOf(problem, a))
  const allowed: number[][] = []
  for (const item of items) {
    const list: number[] = []
    for (const r of problem.regions.keys()) {
      if (relaxed.mayLieIn(item, r)) list.push(r)
      yield
    }
    allowed.push(list)
  }
  const search = new ReachSearch(problem)
  for (const group of groupsOf(allowed)) {
    const inGroup = items.filter((_, i) => (allowed[i] as number[]).every((r) => group.includes(r)))
    const refutation = yield* search.refuteGroup(inGroup, group)
    if (refutation) return refutation
    yield
  }
  return null
}

/** The sets of regions allowed to some item, all of them together, and unions of two. */
function groupsOf(allowed: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const groups = new Map<string, readonly number[]>()
  const add = (list: readonly number[]) => {
    const group = [...new Set(list)].sort((a, b) => a - b)
    groups.set(group.join(), group)
  }
  allowed.forEach(add)
  const distinct = [...groups.values()]
  add(allowed.flat())
  for (const [i, a] of distinct.entries())
    for (const b of distinct.slice(0, i)) {
      if (groups.size >= MOST_GROUPS) return [...groups.values()]
      add([...a, ...b])
    }
  return [...groups.values()]
}

/** What some of the items can reach in one region; null: all of it. */
interface Covered {
  readonly region: number
  reaches: Polygon[] | null
  /** How many of the items are in it already. */
  count: number
}

class ReachSearch {
  private readonly reaches = new Map<string, Rings | null>()
  private readonly grounds: readonly number[]
  private operations = 0

  constructor(private readonly problem: PackingProblem) {
    this.grounds = problem.regions.map(groundArea)
  }

  *refuteGroup(items: readonly number[], regions: readonly number[]): Slices<Refutation | null> {
    const { problem } = this
    const areas = items.map((item) => problem.items[item]!.copies * areaOf(problem, item))
    const all = areas.reduce((sum, area) => sum + area, 0)
    const ground = regions.reduce((sum, r) => sum + (this.grounds[r] as number), 0)
    const covered = regions.map((region): Covered => ({ region, reaches: [], count: 0 }))
    let needed = 0
    for (const [k, area] of areas.entries()) {
      needed += area
      if (needed < LEAST_SHARE * ground) continue
      const largest = items.slice(0, k + 1)
      if (!this.mayAsk(largest, covered)) return null
      let available = 0
      for (const part of covered) available += yield* this.areaReached(part, largest)
      if (exceeds(needed, available)) {
        const certificate = { by: 'reach', items: largest, regions } as const
        return { kind: 'area', items: largest, figures: { needed, available }, certificate }
      }
      // More items reach no less, and need no more than all of them do.
      if (available >= all) return null
    }
    return null
  }

  /** Whether what is still to be found out stays within what this proof may cost. */
  private mayAsk(items: readonly number[], covered: readonly Covered[]): boolean {
    let operations = this.operations
    for (const { region, count } of covered) {
      operations += 2
      for (const item of items.slice(count))
        if (!this.reaches.has(`${item} ${region}`)) operations += this.costOf(item, region)
    }
    return operations <= MOST_OPERATIONS
  }

  private costOf(item: number, r: number): number {
    return 3 * this.problem.items[item]!.ways[r]!.length
  }

  /** Area of the region that the items, of which some are in `covered` already, can reach together, at most. */
  private *areaReached(covered: Covered, items: readonly number[]): Slices<number> {
    const { outline, forbidden } = this.problem.regions[covered.region] as Region
    const whole = this.grounds[covered.region] as number
    for (const item of items.slice(covered.count)) {
      const reach = this.reach(item, covered.region)
      if (reach) covered.reaches?.push(...reach)
      else covered.reaches = null
      yield
    }
    covered.count = items.length
    if (covered.reaches === null) return whole
    this.operations += 2
    const ground = ringsDifference([polygonCounterClockwise(outline)], forbidden.map(polygonCounterClockwise))
    const reached = ringsIntersection(ringsUnion(covered.reaches), ground)
    return Math.min(ringsArea(reached) + areaSlack(reached), whole)
  }

  /** What the item can cover, and more: the holes of its domain are filled in. null: all of the region, for all that is known. */
  private reach(item: number, r: number): Rings | null {
    const key = `${item} ${r}`
    let reach = this.reaches.get(key)
    if (reach === undefined) {
      reach = reachOf(this.problem.items[item] as Item, this.problem.regions[r] as Region, r)
      this.reaches.set(key, reach)
      this.operations += this.costOf(item, r)
    }
    return reach
  }
}

function reachOf(item: Item, region: Region, r: number): Rings | null {
  const outline = centred(item.outline)
  const reached: Polygon[] = []
  for (const way of item.ways[r] ?? []) {
    const core = way.tilt === 0 ? coreOutline(outline, way) : null
    if (!core) return null
    const domain = coreDomain(groundOf(item, region), core).filter((ring) => polygonArea(ring) > 0)
    reached.push(...domain.flatMap((ring) => minkowskiSum(ring, polygonOriented(outline, way))))
  }
  return reached
}
