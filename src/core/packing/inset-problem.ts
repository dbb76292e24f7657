import type { Mm } from '../base/units.ts'
import { ringsArea, ringsDifference, ringsOffset } from '../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../geometry/polygon.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import type { PackingProblem, Placement, Region, Seat } from './problem.ts'

/** A problem with every edge of its regions and forbidden areas moved in. */
export interface InsetProblem {
  readonly problem: PackingProblem
  /** Index of the region that each of the inset ones comes from: one with a neck may fall into several. */
  readonly from: readonly number[]
}

/** Items and their order stay as they are. */
export function insetProblem(problem: PackingProblem, inset: Mm): InsetProblem {
  const from: number[] = []
  const regions: Region[] = []
  problem.regions.forEach((region, r) => {
    for (const ring of ringsOffset([polygonCounterClockwise(region.outline)], -inset, 'mitre')) {
      if (polygonArea(ring) <= 0) continue
      regions.push({
        id: region.id,
        outline: ring,
        forbidden: region.forbidden.flatMap((area) => grown(area, inset)),
        seats: insetSeats(region, inset),
        keptClear: (region.keptClear ?? []).flatMap((area) => grown(area, inset)),
      })
      from.push(r)
    }
  })
  const items = problem.items.map((item) => ({ ...item, ways: from.map((r) => item.ways[r] ?? []) }))
  return { problem: { ...problem, regions, items }, from }
}

function grown(area: Polygon, distance: Mm): readonly Polygon[] {
  return ringsOffset([polygonCounterClockwise(area)], distance, 'mitre').filter(
    (ring) => polygonArea(ring) > 0,
  )
}

/** The seats of a region whose edges move in: what sits on them moves along. They keep their length; the region trims them. */
export function insetSeats({ seats = [] }: Region, inset: Mm): readonly Seat[] {
  return seats.map(({ from, to }) => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const [nx, ny] = [(from[1] - to[1]) / length, (to[0] - from[0]) / length]
    const moved = ([x, y]: Point): Point => [x + nx * inset, y + ny * inset]
    return { from: moved(from), to: moved(to) }
  })
}

/** Placements in the problem as it was, as placements in the inset one: in the first part of each region, wherever that is. */
export function placementsInset(
  { from }: InsetProblem,
  placements: readonly Placement[],
): readonly Placement[] {
  return placements.map((placement) => ({ ...placement, region: from.indexOf(placement.region) }))
}

export function placementsBack(
  { from }: InsetProblem,
  placements: readonly Placement[],
): readonly Placement[] {
  return placements.map((placement) => ({ ...placement, region: from[placement.region] as number }))
}

/** Area of all regions without what is forbidden there, mm². */
export function freeArea({ regions }: PackingProblem): number {
  return regions.reduce(
    (sum, { outline, forbidden }) =>
      sum + ringsArea(ringsDifference([polygonCounterClockwise(outline)], forbidden)),
    0,
  )
}
