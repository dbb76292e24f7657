import type { Mm } from '../../base/units.ts'
import { ringsArea, ringsIntersection, ringsOffset, ringsUnion } from '../../geometry/clipper.ts'
import { polygonCounterClockwise, polygonPerimeter } from '../../geometry/polygon.ts'
import type { Polygon } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { areaAtLeast, areaAtMost, areaSlack, exceeds } from './area-bounds.ts'

/**
 * Lemma: pieces that do not overlap cover at most the area there is. With a clearance c, pieces grown by c/2 do
 * not overlap either, and lie in the ground grown by c/2, whose area is at most A + L c/2 + π (c/2)² for each
 * connected part of it that holds a piece (Steiner). Flaws may cut a region into many parts, but no more of them
 * than there are copies hold one.
 */
export function refuteByArea(problem: PackingProblem): Refutation | null {
  const items = neededItems(problem)
  const used = problem.regions.filter((_, r) => items.some((i) => problem.items[i]!.ways[r]!.length > 0))
  const half = problem.clearance / 2
  const needed = sum(items.map((i) => problem.items[i]!.copies * grownArea(problem.items[i]!.outline, half)))
  const copies = sum(items.map((i) => problem.items[i]!.copies))
  const available = sum(used.map((region) => groundArea(region) + grownBy(region, half, copies)))
  if (!exceeds(needed, available)) return null
  return { kind: 'area', items, figures: { needed, available }, certificate: { by: 'area', items } }
}

/** Indices of the items that must be placed. */
export function neededItems({ items }: PackingProblem): readonly number[] {
  return items.flatMap((item, i) => (item.optional ? [] : [i]))
}

/** Area that the outline grown by `margin` has at least: arcs are cut short and rounding is taken off. */
function grownArea(outline: Polygon, margin: Mm): number {
  const plain = areaAtLeast(outline)
  if (margin === 0) return plain
  const grown = ringsOffset([polygonCounterClockwise(outline)], margin, 'round')
  return Math.max(plain, ringsArea(grown) - areaSlack(grown))
}

/** How much growing by `margin` adds at most to those parts of a region's ground that hold some of the copies. */
function grownBy({ outline, forbidden }: Region, margin: Mm, copies: number): number {
  if (margin === 0) return 0
  const boundary = polygonPerimeter(outline) + sum(forbidden.map(polygonPerimeter))
  const parts = forbidden.length === 0 ? 1 : copies
  return boundary * margin + parts * Math.PI * margin * margin
}

/** Area that a region has at most without its forbidden areas: exact, but for doubles, where there are none. */
export function groundArea({ outline, forbidden }: Region): number {
  const whole = areaAtMost(outline)
  if (forbidden.length === 0) return whole
  const lost = ringsIntersection(ringsUnion(forbidden.map(polygonCounterClockwise)), [
    polygonCounterClockwise(outline),
  ])
  return whole - Math.max(0, ringsArea(lost) - areaSlack(lost))
}

/** Area that an item's outline has at least. */
export function areaOf({ items }: PackingProblem, item: number): number {
  return areaAtLeast((items[item] as Item).outline)
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
