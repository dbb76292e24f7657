import { sharedRange } from '../../base/turn-range.ts'
import type { Deg } from '../../base/units.ts'
import type { Way } from '../../geometry/types.ts'
import type { Item, PackingProblem, Placement } from '../problem.ts'
import { type Choice, type Group, groupsToSettle, kindKey, kindOf, turnsApart } from './groups.ts'

/** The problem with the group's items turned only as the choice has it. */
export function withChoice(problem: PackingProblem, group: string, { kinds }: Choice): PackingProblem {
  return withWays(problem, group, (item, way, headed) =>
    kinds.has(kindKey(kindOf(item, way, headed))) ? [way] : [],
  )
}

/** The problem with the group's items turned only to this turn or its opposite, each to within what it may be off; where heads tell, to this turn. */
export function turnedTo(problem: PackingProblem, group: string, turn: Deg): PackingProblem {
  return withWays(problem, group, (item, way, headed) => {
    const within = item.alike?.within ?? 0
    const turns = headed ? [turn] : [turn, turn + 180]
    return turns.flatMap((at): readonly Way[] => {
      const shared = sharedRange(way, { turn: at, tilt: within })
      return shared ? [{ ...shared, mirrored: way.mirrored }] : []
    })
  })
}

function withWays(
  problem: PackingProblem,
  group: string,
  kept: (item: Item, way: Way, headed: boolean) => readonly Way[],
): PackingProblem {
  const items = problem.items.map((item): Item => {
    if (item.alike?.group !== group) return item
    const ways = item.ways.map((list, r) =>
      list.flatMap((way) => kept(item, way, problem.regions[r]?.headed === true)),
    )
    return { ...item, ways }
  })
  return { ...problem, items }
}

/**
 * The problem with every group of items turned as a packing of it turns them: whatever is found in it turns alike. The
 * packing itself is one of it.
 */
export function heldAlike(problem: PackingProblem, placements: readonly Placement[]): PackingProblem {
  return groupsToSettle(problem).reduce((held, { name, choices }: Group) => {
    const own = placements.filter(({ item }) => problem.items[item]?.alike?.group === name)
    const settled = choices
      .filter((choice) => choice.settled)
      .map((choice) => withChoice(held, name, choice))
      .find((chosen) => own.every((placement) => mayLie(chosen, placement)))
    return settled ?? turnedTo(held, name, commonTurn(problem, own))
  }, problem)
}

/** Degrees by which the turn of a placement may miss its range. */
const TURN_ROUNDING = 1e-6

/**
 * The problem with a turn chosen for every group, one after another, as far as there are no more than `most` choices: what is
 * found in any of them turns alike. Where a group may turn anyhow it turns with the grain, or square to it.
 */
export function everyChoice(problem: PackingProblem, most: number): readonly PackingProblem[] {
  return groupsToSettle(problem)
    .reduce<readonly PackingProblem[]>(
      (all, { name, choices }) =>
        all.flatMap((one) =>
          choices.flatMap((choice) =>
            choice.settled
              ? [withChoice(one, name, choice)]
              : [0, 90].map((turn) => turnedTo(withChoice(one, name, choice), name, turn)),
          ),
        ),
      [problem],
    )
    .filter(({ items }) =>
      items.every(({ optional, ways }) => optional || ways.some((list) => list.length > 0)),
    )
    .slice(0, most)
}

/** True if the item may be turned so there. */
export function mayLie({ items }: PackingProblem, { item, region, turn, mirrored }: Placement): boolean {
  return (items[item]?.ways[region] ?? []).some(
    (way) => way.mirrored === mirrored && turnsApart(way.turn, turn, true) <= way.tilt + TURN_ROUNDING,
  )
}

/** The turn that all copies, which turn alike, are off by no more than they may: the middle of what they share. 0 for none. */
export function commonTurn({ items, regions }: PackingProblem, placements: readonly Placement[]): Deg {
  // From a copy whose head tells, for such copies share a direction, not only a line.
  const first = placements.find(({ region }) => regions[region]?.headed) ?? placements[0]
  if (!first) return 0
  const leeway = placements.map(({ item, turn }) => {
    const off = ((((turn - first.turn + 90) % 180) + 180) % 180) - 90
    const within = items[item]?.alike?.within ?? 0
    return [off - within, off + within] as const
  })
  const low = Math.max(...leeway.map(([from]) => from))
  const high = Math.min(...leeway.map(([, to]) => to))
  return first.turn + (low + high) / 2
}
