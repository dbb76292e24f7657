import type { Slices } from '../../base/slices.ts'
import type { Mm } from '../../base/units.ts'
import { convexHull } from '../../geometry/convex.ts'
import type { Polygon } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import { groundOf } from '../engine/confinement.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { neededItems } from './area.ts'
import { centred, coreOutline } from './core-outline.ts'
import { runFigures } from './length-figures.ts'
import { coreDomain } from './relaxed.ts'
import { provedInEveryTurn, waysInParts } from './turns.ts'

/**
 * Lemma: a copy has a place only where its inner-fit region is not empty; the domain of a core holds that region
 * of every orientation that the core stands for. If all domains in all regions are empty, one copy alone is too
 * much. Ranges of turns are cut finer until they are settled (branch and bound over angles). Pauses at each.
 *
 * @param withRoom Indices of items known to have a place by themselves, which need not be looked at.
 */
export function* refuteAlone(
  problem: PackingProblem,
  withRoom: ReadonlySet<number> = new Set(),
): Slices<Refutation | null> {
  for (const item of neededItems(problem))
    if (!withRoom.has(item) && (yield* fitsNowhere(problem, problem.items[item] as Item)))
      return refutationOf(problem, item)
  return null
}

function refutationOf(problem: PackingProblem, item: number): Refutation {
  const runs = runFigures(problem, item)
  const figures = Object.keys(runs).length > 0 ? runs : lengthFigures(problem, item)
  const certificate = { by: 'no-place', item } as const
  return { kind: 'piece', items: [item], figures, certificate }
}

function* fitsNowhere({ regions }: PackingProblem, item: Item): Slices<boolean> {
  const outline = centred(item.outline)
  const none = (r: number) => (core: Polygon) =>
    coreDomain(groundOf(item, regions[r] as Region), core).length === 0
  // Mostly a piece does fit somewhere, in the middle of one of its ranges of turns: that is seen soonest.
  for (const r of regions.keys())
    for (const way of waysInParts(item.ways[r] ?? [])) {
      const core = coreOutline(outline, { ...way, tilt: 0 })
      if (!core || !none(r)(core)) return false
      yield
    }
  for (const r of regions.keys())
    if (!(yield* provedInEveryTurn(outline, item.ways[r] ?? [], none(r)))) return false
  return true
}

/** Where the piece is longer than any region in any direction: both lengths, for the reason's words. */
function lengthFigures({ regions, items }: PackingProblem, item: number): Record<string, number> {
  const longest = diameter(items[item]!.outline)
  const room = Math.max(
    0,
    ...regions.filter((_, r) => items[item]!.ways[r]!.length > 0).map((region) => diameter(region.outline)),
  )
  return longest > room ? { longest, room } : {}
}

/** The greatest distance between two points. */
function diameter(polygon: Polygon): Mm {
  const hull = convexHull(polygon)
  return Math.max(
    ...hull.map(([ax, ay]) => Math.max(...hull.map(([bx, by]) => Math.hypot(ax - bx, ay - by)))),
  )
}
