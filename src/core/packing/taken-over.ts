import { NO_DEADLINE } from '../base/deadline.ts'
import { ringsOffset } from '../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise } from '../geometry/polygon.ts'
import { polygonMoved, polygonOriented } from '../geometry/transform.ts'
import type { Polygon } from '../geometry/types.ts'
import { agreeing } from './alike/agreeing.ts'
import { heldAlike } from './alike/restrict.ts'
import { checkPacking } from './check/check-packing.ts'
import type { CopyRef, Item, PackingProblem, Placement } from './problem.ts'
import { type PartialPacking, solve } from './solve.ts'

/** Optional copies are looked for at a glance, which is one constructive lay, the same whatever the seed. */
const GLANCE = { seed: 1, deadline: NO_DEADLINE, clock: () => 0, glance: true }

/**
 * A packing known before, taken over as it lies, if every needed copy of this problem has a place in it and the checker
 * accepts them all; null if not. Optional copies stay where they still hold, and others are added where there is room.
 */
export function takenOver(problem: PackingProblem, known: readonly Placement[]): PartialPacking | null {
  const isOptional = ({ item }: CopyRef) => problem.items[item]?.optional === true
  const needed = known.filter((placement) => !isOptional(placement))
  if (!holds(problem, needed)) return null
  return withOptional(heldAlike(problem, agreeing(problem, known)), needed, known.filter(isOptional))
}

/**
 * The needed copies where they lie, which must keep every rule, and as many optional ones as find room beside them: first
 * where `known` has them.
 */
export function withOptional(
  problem: PackingProblem,
  needed: readonly Placement[],
  known: readonly Placement[],
): PartialPacking {
  let placements = needed
  if (!problem.items.some(({ optional }) => optional))
    return { placements, leftOut: unplaced(problem, placements) }
  for (const placement of known)
    if (holds(problem, [...placements, placement])) placements = [...placements, placement]
  const filled = [...placements, ...roomFor(problem, placements)]
  if (holds(problem, filled)) placements = filled
  return { placements, leftOut: unplaced(problem, placements) }
}

/** True if these copies keep every rule and lack none that is needed. */
function holds(problem: PackingProblem, placements: readonly Placement[]): boolean {
  const leftOut = unplaced(problem, placements)
  return (
    leftOut.every(({ item }) => problem.items[item]?.optional) &&
    checkPacking(problem, placements, leftOut).length === 0
  )
}

/** Copies without a place, in the order of the items. */
export function unplaced({ items }: PackingProblem, placements: readonly CopyRef[]): readonly CopyRef[] {
  const placed = new Set(placements.map(({ item, copy }) => `${item} ${copy}`))
  return items.flatMap(({ copies }, item) =>
    Array.from({ length: copies }, (_, copy) => ({ item, copy })).filter(
      (ref) => !placed.has(`${item} ${ref.copy}`),
    ),
  )
}

/** Places beside these for copies that are still without: those are all the problem, and what is placed is forbidden ground. */
function roomFor(problem: PackingProblem, placements: readonly Placement[]): readonly Placement[] {
  const open = unplaced(problem, placements)
  if (open.length === 0) return []
  const copiesOf = problem.items.map((_, i) => open.filter(({ item }) => item === i))
  const kept = problem.items.flatMap((_, i) => (copiesOf[i]?.length ? [i] : []))
  const items = kept.map((i): Item => {
    return { ...(problem.items[i] as Item), copies: copiesOf[i]?.length ?? 0, optional: true }
  })
  const regions = problem.regions.map((region, r) => ({
    ...region,
    forbidden: [...region.forbidden, ...groundTaken(problem, placements, r)],
  }))
  const answer = solve({ ...problem, items, regions }, GLANCE)
  if (answer.verdict === 'cannot') return []
  return answer.placements.flatMap((placement) => {
    const ref = copiesOf[kept[placement.item] as number]?.[placement.copy]
    return ref ? [{ ...placement, ...ref }] : []
  })
}

/** What the placed copies cover of a region, with the clearance round it. */
function groundTaken(
  { items, clearance }: PackingProblem,
  placements: readonly Placement[],
  region: number,
): readonly Polygon[] {
  return placements
    .filter((placement) => placement.region === region)
    .flatMap((placement) => {
      const laid = polygonOriented((items[placement.item] as Item).outline, placement)
      const outline = polygonCounterClockwise(polygonMoved(laid, placement.x, placement.y))
      if (clearance === 0) return [outline]
      return ringsOffset([outline], clearance, 'mitre').filter((ring) => polygonArea(ring) > 0)
    })
}
