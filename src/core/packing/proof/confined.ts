import type { Slices } from '../../base/slices.ts'
import type { Deg, Mm } from '../../base/units.ts'
import { ringsIntersection } from '../../geometry/clipper.ts'
import { polygonMoved } from '../../geometry/transform.ts'
import type { Rings, Way } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import { edgeLength, groundOf, isConfined, sittingWays } from '../engine/confinement.ts'
import { flatContains, flatDistance2, flatRings } from '../engine/flat-rings.ts'
import type { Item, PackingProblem, Region, Seat, Showing } from '../problem.ts'
import { neededItems } from './area.ts'
import { confinedPlaces, confinedWays, holding, placeOfSpot } from './confined-places.ts'
import { centred, coreOutline, toCentre } from './core-outline.ts'
import { coreDomain } from './relaxed.ts'
import { halves, NARROWEST, waysInParts, waysNoWider } from './turns.ts'

/**
 * Lemma: a copy that must sit on a seat, or show a spot, has a place only where its core has one and the translation
 * is also among those that seat it and show the spot. If those sets do not meet in any region and orientation, one
 * copy alone is too much. Ranges of turns are cut finer until they are settled. Kind `shows` if there is a spot to
 * show, else `sit`.
 */
export function* refuteConfined(problem: PackingProblem): Slices<Refutation | null> {
  for (const i of neededItems(problem)) {
    const item = problem.items[i] as Item
    if (isConfined(item) && (yield* hasNoPlace(item, problem.regions))) return yield* refutationOf(problem, i)
  }
  return null
}

function* refutationOf(problem: PackingProblem, index: number): Slices<Refutation> {
  const item = problem.items[index] as Item
  const seated = item.sits === undefined ? {} : seatFigures(problem, item, item.sits)
  const shown = item.shows ? yield* showingFigures(problem, item, item.shows) : {}
  const certificate = { by: 'no-place', item: index } as const
  return { kind: item.shows ? 'shows' : 'sit', items: [index], figures: { ...seated, ...shown }, certificate }
}

/** More ranges of turns than this are not looked at: some tenths of a second. */
const MOST_WAYS = 300

/** True if it is proved that the item has no place; ends at the first turn that has one for all that is known. Pauses at each. */
function* hasNoPlace(item: Item, regions: readonly Region[]): Slices<boolean> {
  let looked = 0
  for (const [r, region] of regions.entries()) {
    const open = [...waysInParts(confinedWays(item, region, item.ways[r] ?? []))]
    for (let way = open.pop(); way !== undefined; way = open.pop()) {
      yield
      if (++looked > MOST_WAYS || mayLie(item, region, { ...way, tilt: 0 })) return false
      if (way.tilt === 0 || !mayLie(item, region, way)) continue
      if (way.tilt < NARROWEST) return false
      open.push(...halves(way))
    }
  }
  return true
}

/** False if it is proved that the item has no place in the region in any of these orientations. */
function mayLie(item: Item, region: Region, way: Way): boolean {
  const outline = centred(item.outline)
  const core = coreOutline(outline, way)
  if (!core) return true
  let places: Rings = coreDomain(groundOf(item, region), core)
  for (const set of confinedPlaces(item, region, way, outline, toCentre(item.outline)))
    places = places.length === 0 || set.length === 0 ? [] : ringsIntersection(places, set)
  return places.length > 0
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

/** How near the spot must be, and no less than what distance is left where the item has room and holds all of the spot. */
function* showingFigures(
  { regions }: PackingProblem,
  item: Item,
  shows: Showing,
): Slices<Record<string, number>> {
  const { within } = shows
  const lies = regions.flatMap((region, r) =>
    waysNoWider(waysInParts(item.ways[r] ?? []), FINE_TILT).map((way) => ({ region, way })),
  )
  if (lies.length > MOST_LIES) return { within }
  let nearest = Number.POSITIVE_INFINITY
  for (const { region, way } of lies) {
    nearest = Math.min(nearest, leastDistance(item, shows, groundOf(item, region), way) ?? 0)
    yield
  }
  return Number.isFinite(nearest) && nearest > within ? { within, nearest } : { within }
}

/** A distance is worked out for ranges of turns no wider than this, and for no more of them than this. */
const FINE_TILT: Deg = 1.25
const MOST_LIES = 100

/** A lower bound; infinite where there is no place at all, null if nothing can be said. */
function leastDistance(item: Item, shows: Showing, region: Region, way: Way): Mm | null {
  const outline = centred(item.outline)
  const core = coreOutline(outline, way)
  const held = holding(shows, way, outline)
  if (!core || held.length === 0) return null
  const places: Rings = ringsIntersection(coreDomain(region, core), held[0] as Rings)
  if (places.length === 0) return Number.POSITIVE_INFINITY
  const { centre, radius } = placeOfSpot(shows, way, toCentre(item.outline))
  const flat = flatRings(places.map((ring) => polygonMoved(ring, -centre[0], -centre[1])))
  const distance = flatContains(flat, 0, 0) ? 0 : Math.sqrt(flatDistance2(flat, 0, 0))
  return Math.max(0, distance - (radius - shows.within))
}
