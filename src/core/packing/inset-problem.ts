import type { Mm } from '../base/units.ts'
import { ringsArea, ringsDifference, ringsOffset } from '../geometry/clipper.ts'
import { pointInPolygon, polygonArea, polygonCentroid, polygonCounterClockwise } from '../geometry/polygon.ts'
import { polygonMoved, polygonOriented } from '../geometry/transform.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import type { Item, PackingProblem, Placement, Region, Seat } from './problem.ts'

/** A problem with every edge of its regions and forbidden areas moved in. */
export interface InsetProblem {
  readonly original: PackingProblem
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
        ...(region.headed ? { headed: true } : {}),
      })
      from.push(r)
    }
  })
  const items = problem.items.map((item) => ({ ...item, ways: from.map((r) => item.ways[r] ?? []) }))
  return { original: problem, problem: { ...problem, regions, items }, from }
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

/**
 * Placements in the problem as it is, as placements in the inset one: each in the part of its region that holds its middle, else
 * the first. What sits on a seat moves in with it.
 */
export function placementsInset(
  { problem, from, original }: InsetProblem,
  placements: readonly Placement[],
): readonly Placement[] {
  return placements.map((placement) => {
    const parts = from.flatMap((region, part) => (region === placement.region ? [part] : []))
    const part = partHolding(problem, placement, parts)
    if (part === undefined) return { ...placement, region: -1 }
    return seatedAlong(placement, original, problem, part)
  })
}

function partHolding(
  { items, regions }: PackingProblem,
  placement: Placement,
  parts: readonly number[],
): number | undefined {
  if (parts.length < 2) return parts[0]
  const { outline } = items[placement.item] as Item
  const [x, y] = polygonCentroid(polygonOriented(outline, placement))
  const middle: Point = [x + placement.x, y + placement.y]
  return parts.find((part) => pointInPolygon(middle, (regions[part] as Region).outline) >= 0) ?? parts[0]
}

/** The other way round: what sits on a seat moves out with it. */
export function placementsBack(
  { problem, from, original }: InsetProblem,
  placements: readonly Placement[],
): readonly Placement[] {
  return placements.map((placement) =>
    seatedAlong(placement, problem, original, from[placement.region] as number),
  )
}

/** The placement in a region of another problem whose seats are the same ones moved; what sits on one of them moves with it. */
function seatedAlong(
  placement: Placement,
  here: PackingProblem,
  there: PackingProblem,
  region: number,
): Placement {
  const { sits, outline } = here.items[placement.item] as Item
  const seats = here.regions[placement.region]?.seats ?? []
  if (sits === undefined || seats.length === 0) return { ...placement, region }
  const edge = [outline[sits], outline[(sits + 1) % outline.length]] as Polygon
  const laid = polygonMoved(polygonOriented(edge, placement), placement.x, placement.y)
  const off = seats.map((seat) => Math.max(...laid.map((end) => distanceToSeat(end, seat))))
  const nearest = off.indexOf(Math.min(...off))
  const [a, b] = [(seats[nearest] as Seat).from, there.regions[region]?.seats?.[nearest]?.from]
  if (!b) return { ...placement, region }
  return { ...placement, region, x: placement.x + b[0] - a[0], y: placement.y + b[1] - a[1] }
}

function distanceToSeat([x, y]: Point, { from, to }: Seat): Mm {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const along = ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy)
  const share = Math.min(1, Math.max(0, along))
  return Math.hypot(x - from[0] - share * dx, y - from[1] - share * dy)
}

/** Area of all regions without what is forbidden there, mm². */
export function freeArea({ regions }: PackingProblem): number {
  return regions.reduce(
    (sum, { outline, forbidden }) =>
      sum + ringsArea(ringsDifference([polygonCounterClockwise(outline)], forbidden)),
    0,
  )
}
