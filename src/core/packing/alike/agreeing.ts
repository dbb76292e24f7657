import type { Deg } from '../../base/units.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import type { Item, PackingProblem, Placement } from '../problem.ts'
import { turnsApart } from './groups.ts'

/** Degrees by which two turns may be farther off each other than they may be: less than the checker allows. */
const TURN_ROUNDING: Deg = 1e-6

/** The first group of which two placed copies do not turn alike; null: all do. */
export function groupAtOdds(problem: PackingProblem, placements: readonly Placement[]): string | null {
  const kept = new Set(agreeing(problem, placements))
  const odd = placements.find((placement) => !kept.has(placement))
  return odd ? (problem.items[odd.item]?.alike?.group ?? null) : null
}

/** Of every group the copies that turn alike with one another, of the choices the one with most area; all others stay. */
export function agreeing(problem: PackingProblem, placements: readonly Placement[]): readonly Placement[] {
  const groups = new Map<string, Placement[]>()
  for (const placement of placements) {
    const group = problem.items[placement.item]?.alike?.group
    if (group !== undefined) groups.set(group, [...(groups.get(group) ?? []), placement])
  }
  const kept = new Set([...groups.values()].flatMap((placed) => largestAlike(problem, placed)))
  return placements.filter((placement) => {
    const inGroup = problem.items[placement.item]?.alike !== undefined
    return !inGroup || kept.has(placement)
  })
}

/** Each copy in turn with all those that agree with it and among themselves, needed ones and large ones first. */
function largestAlike(problem: PackingProblem, placed: readonly Placement[]): readonly Placement[] {
  const worth = ({ item }: Placement) => {
    const { outline, optional } = problem.items[item] as Item
    return Math.abs(polygonArea(outline)) * (optional ? OPTIONAL_SHARE : 1)
  }
  const sorted = [...placed].sort((a, b) => worth(b) - worth(a))
  let best: readonly Placement[] = []
  let most = -1
  for (const first of sorted) {
    const alike = [first]
    for (const other of sorted)
      if (other !== first && alike.every((one) => areAlike(problem, one, other))) alike.push(other)
    const total = alike.reduce((sum, one) => sum + worth(one), 0)
    if (total > most) [best, most] = [alike, total]
  }
  return best
}

/** So much less than a needed copy of its size is an optional one worth. */
const OPTIONAL_SHARE = 1e-3

function areAlike({ items, regions }: PackingProblem, a: Placement, b: Placement): boolean {
  const headed = regions[a.region]?.headed === true && regions[b.region]?.headed === true
  const within = (items[a.item]?.alike?.within ?? 0) + (items[b.item]?.alike?.within ?? 0)
  return turnsApart(a.turn, b.turn, headed) <= within + TURN_ROUNDING
}
