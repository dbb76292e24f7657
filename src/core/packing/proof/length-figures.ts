import type { Mm } from '../../base/units.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import { groundOf } from '../engine/confinement.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { longestRun, longestRunIn } from './clear-run.ts'

/** Lengths that nearly agree explain nothing: both would be written alike. */
const TELLING: Mm = 1

/** Widths asked for, as shares of the item's own: 0 first, which is the plainest to tell. */
const SHARES = [0, 0.25, 0.5, 0.75, 0.95]

type Figures = Readonly<Record<string, number>>

/**
 * The plainest lengths that keep an item from lying anywhere, if it lies with its head up or down only: what it needs
 * `along` the grain, or `across` it, and the longest clear `run`, of `width` if that counts. A rectangle in the item
 * longer than every rectangle as wide in any region has no place. Nothing if there are no such lengths.
 */
export function runFigures({ regions, items }: PackingProblem, index: number): Figures {
  const item = items[index] as Item
  const open = openRegions(item, regions)
  if (!open || open.length === 0) return {}
  for (const share of SHARES)
    for (const axis of ['along', 'across'] as const) {
      const outline = standing(item.outline, axis)
      const grounds = open.map((region) => standingRegion(groundOf(item, region), axis))
      const { minX, maxX } = polygonBox(outline)
      const width = share * (maxX - minX)
      const needs = longestRunIn(outline, width)
      const run = Math.max(...grounds.map((ground) => longestRun(ground, width)))
      // No run at all is a width that nothing has: told better the other way round, or not at all.
      if (run > 0 && needs > run + TELLING) return { [axis]: needs, run, ...(width > 0 ? { width } : {}) }
    }
  return {}
}

/**
 * Where two copies have one region between them: what they need side by side and one above the other, and what the
 * region has at most. Rectangles in the two that do not overlap lie apart across or along, and their sizes add up.
 */
export function pairFigures({ regions, items }: PackingProblem, copies: readonly number[]): Figures {
  if (copies.length !== 2) return {}
  const [a, b] = copies.map((i) => items[i] as Item) as [Item, Item]
  const [openToA, openToB] = [openRegions(a, regions), openRegions(b, regions)]
  const only = openToA?.[0]
  if (!only || openToA.length !== 1 || openToB?.length !== 1 || openToB[0] !== only) return {}
  const { minX, minY, maxX, maxY } = polygonBox(only.outline)
  for (const [wa, ha] of rectanglesIn(a.outline))
    for (const [wb, hb] of rectanglesIn(b.outline))
      if (wa + wb > maxX - minX + TELLING && ha + hb > maxY - minY + TELLING)
        return { across: wa + wb, widest: maxX - minX, along: ha + hb, longest: maxY - minY }
  return {}
}

function rectanglesIn(outline: Polygon): readonly (readonly [Mm, Mm])[] {
  const { minX, maxX } = polygonBox(outline)
  return [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3].map((share) => {
    const width = share * (maxX - minX)
    return [width, longestRunIn(outline, width)] as const
  })
}

/** The regions that the item may lie in; null if somewhere it may lie another way than head up or down. */
function openRegions({ ways }: Item, regions: readonly Region[]): readonly Region[] | null {
  if (ways.flat().some(({ turn, tilt }) => tilt > 0 || turn % 180 !== 0)) return null
  return regions.filter((_, r) => (ways[r] ?? []).length > 0)
}

/** As it is, or with across and along changed over: a quarter turn. */
function standing(polygon: Polygon, axis: 'along' | 'across'): Polygon {
  return axis === 'along' ? polygon : polygon.map(([x, y]): Point => [-y, x])
}

function standingRegion(region: Region, axis: 'along' | 'across'): Region {
  const { id, outline, forbidden } = region
  return { id, outline: standing(outline, axis), forbidden: forbidden.map((area) => standing(area, axis)) }
}
