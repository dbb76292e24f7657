import type { Mm } from '../../base/units.ts'
import { ringsIntersection } from '../../geometry/clipper.ts'
import { polygonMoved } from '../../geometry/transform.ts'
import type { Rings, Way } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import { edgeLength, groundOf, isConfined, sittingWays } from '../engine/confinement.ts'
import { flatContains, flatDistance2, flatRings } from '../engine/flat-rings.ts'
import type { Item, PackingProblem, Region, Seat, Showing } from '../problem.ts'
import { neededItems } from './area.ts'
import { holding, placeOfSpot } from './confined-places.ts'
import { centred, coreOutline, MARGIN, toCentre } from './core-outline.ts'
import { coreDomain, type Relaxed } from './relaxed.ts'

/**
 * Lemma: a copy that must sit on a seat, or show a spot, has a place only where its core has one and the translation
 * is also among those that seat it and show the spot. If those sets do not meet in any region and orientation, one
 * copy alone is too much. Kind `shows` if there is a spot to show, else `sit`.
 */
export function refuteConfined(relaxed: Relaxed): Refutation | null {
  const { problem } = relaxed
  const index = neededItems(problem).find(
    (i) => isConfined(problem.items[i] as Item) && !problem.regions.some((_, r) => relaxed.mayLieIn(i, r)),
  )
  if (index === undefined) return null
  const { shows, sits } = problem.items[index] as Item
  const figures = shows
    ? showingFigures(problem, problem.items[index] as Item, shows)
    : seatFigures(problem, problem.items[index] as Item, sits as number)
  return { kind: shows ? 'shows' : 'sit', items: [index], figures }
}

/** Length of the edge; how many seats there are where the item may lie, how many of them run its way, and the longest of these. */
function seatFigures({ regions }: PackingProblem, item: Item, edge: number): Record<string, number> {
  const open = regions.flatMap((region, r) =>
    (item.ways[r] ?? []).length > 0
      ? (region.seats ?? []).map((seat) => ({ seat, ways: item.ways[r] as readonly Way[] }))
      : [],
  )
  const aligned = open.filter(({ seat, ways }) => sittingWays(item.outline, edge, [seat], ways).length > 0)
  return {
    edge: edgeLength(item.outline, edge),
    seats: open.length,
    aligned: aligned.length,
    longest: Math.max(0, ...aligned.map(({ seat }) => seatLength(seat))),
  }
}

function seatLength({ from, to }: Seat): Mm {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}

/** How near the spot must be, and the least distance that is left where the item has room and holds all of the spot. */
function showingFigures({ regions }: PackingProblem, item: Item, shows: Showing): Record<string, number> {
  const { within } = shows
  const distances: number[] = []
  for (const [r, region] of regions.entries())
    for (const way of item.ways[r] ?? []) {
      const near = way.tilt === 0 ? leastDistance(item, shows, groundOf(item, region), way) : null
      if (near === null) return { within }
      distances.push(near)
    }
  const nearest = Math.min(...distances)
  return Number.isFinite(nearest) ? { within, nearest } : { within }
}

/** A lower bound; infinite where there is no place at all, null if nothing can be said. */
function leastDistance(item: Item, shows: Showing, region: Region, way: Way): Mm | null {
  const outline = centred(item.outline)
  const core = coreOutline(outline, way)
  const held = holding(shows, way, outline)
  if (!core || held.length === 0) return null
  const places: Rings = ringsIntersection(coreDomain(region, core), held[0] as Rings)
  if (places.length === 0) return Number.POSITIVE_INFINITY
  const { centre } = placeOfSpot(shows, way, toCentre(item.outline))
  const flat = flatRings(places.map((ring) => polygonMoved(ring, -centre[0], -centre[1])))
  return flatContains(flat, 0, 0) ? 0 : Math.max(0, Math.sqrt(flatDistance2(flat, 0, 0)) - MARGIN)
}
