import type { Clock, Deadline } from '../base/deadline.ts'
import { seededRandom } from '../base/random.ts'
import type { Mm } from '../base/units.ts'
import { ringsArea, ringsDifference, ringsOffset } from '../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../geometry/polygon.ts'
import type { Polygon } from '../geometry/types.ts'
import { SPARE } from './config.ts'
import { insetSeats } from './inset-seats.ts'
import type { PackingProblem, Placement, Region } from './problem.ts'
import { layoutPlacements, layoutServes } from './search/layout.ts'
import { createModel, type Engine, engineOf } from './search/model.ts'
import { searchLayout } from './search/portfolio.ts'
import { layoutFromPlacements } from './search/transfer.ts'

/** How long the figure may take, and from which seed it is found. */
export interface SpareControl {
  readonly seed: number
  readonly deadline: Deadline
  readonly clock: Clock
}

/**
 * How far every region edge and every forbidden edge can move in with a packing of all needed copies still found:
 * bisection on the inset, each question starting from the last packing. A figure found, never a promise of more;
 * 0 if nothing more can be found, or `placements` leave out needed copies. Never more than `SPARE.most`.
 */
export function spare(problem: PackingProblem, placements: readonly Placement[], control: SpareControl): Mm {
  const engine = engineOf(problem)
  const needed = neededArea(problem)
  let low = 0
  let high = SPARE.most
  let known = placements
  let step = SPARE.firstStep
  while (high - low > Math.max(SPARE.precision, low * SPARE.share) && !control.deadline.passed()) {
    const inset = high === SPARE.most ? Math.min(high, low + step) : (low + high) / 2
    const found = packInset(insetProblem(problem, inset), needed, known, engine, control)
    if (found) {
      low = inset
      known = found
      step *= 2
      if (inset >= SPARE.most) break
    } else high = inset
  }
  return low
}

/** Whether a packing is found with every edge moved in by `inset`: a single try, starting from `placements`. */
export function hasSpare(
  problem: PackingProblem,
  placements: readonly Placement[],
  inset: Mm,
  control: SpareControl,
): boolean {
  const moved = insetProblem(problem, inset)
  return packInset(moved, neededArea(problem), placements, engineOf(problem), control) !== null
}

function neededArea({ items }: PackingProblem): number {
  return items.reduce(
    (sum, { optional, copies, outline }) => sum + (optional ? 0 : copies * Math.abs(polygonArea(outline))),
    0,
  )
}

interface Inset {
  readonly problem: PackingProblem
  /** Index of the region that each of the inset ones comes from. */
  readonly from: readonly number[]
}

/** The problem with every edge moved in; a region with a neck may fall into several. */
function insetProblem(problem: PackingProblem, inset: Mm): Inset {
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
  return { problem: { ...problem, regions, items: items.filter(({ optional }) => !optional) }, from }
}

function grown(area: Polygon, distance: Mm): readonly Polygon[] {
  return ringsOffset([polygonCounterClockwise(area)], distance, 'mitre').filter(
    (ring) => polygonArea(ring) > 0,
  )
}

function packInset(
  { problem, from }: Inset,
  needed: number,
  known: readonly Placement[],
  engine: Engine,
  control: SpareControl,
): readonly Placement[] | null {
  const free = problem.regions.reduce(
    (sum, { outline, forbidden }) => sum + ringsArea(ringsDifference([outline], forbidden)),
    0,
  )
  if (free < needed) return null
  const model = createModel(problem, engine)
  if (model.classes.some(({ options }) => options.length === 0)) return null
  const warmStart = layoutFromPlacements(
    model,
    known.map((placement) => ({ ...placement, region: from.indexOf(placement.region) })),
  )
  const layout = searchLayout(model, SPARE.effort, {
    random: seededRandom(control.seed),
    deadline: control.deadline,
    warmStart,
  })
  if (!layoutServes(model, layout)) return null
  return layoutPlacements(model, layout).map((placement) => ({
    ...placement,
    region: from[placement.region] as number,
  }))
}
