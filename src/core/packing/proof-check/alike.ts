import type { Deg } from '../../base/units.ts'
import type { Way } from '../../geometry/types.ts'
import type { RefutedChoice } from '../answer.ts'
import type { Item, PackingProblem } from '../problem.ts'
import type { Work } from './paving.ts'

/** The problem with other ways for its items. */
export function withWays(problem: PackingProblem, ways: RefutedChoice['ways']): PackingProblem {
  return { ...problem, items: problem.items.map((item, i) => ({ ...item, ways: ways[i] ?? [] })) }
}

/** Degrees by which ranges may miss each other and still be taken to meet. */
const ROUNDING: Deg = 1e-6

/**
 * True if every packing whose items turn alike is one of some choice.
 *
 * Lemma: copies that are pairwise off each other by no more than both may be off share a turn: arcs of a circle, each shorter
 * than a third of it, that meet pairwise have a point in common (Helly). Each copy then lies in a way that comes as near
 * to this turn as the copy may be off. The set of such ways changes only at the ends of these reaches, and is largest there; so
 * it is enough that for every choice of ends, one for each group, some choice has all ways of these sets.
 */
export function haveNoOtherChoice(
  problem: PackingProblem,
  choices: readonly RefutedChoice[],
  work: Work,
): boolean {
  const groups = [...new Set(problem.items.flatMap(({ alike }) => alike?.group ?? []))]
  if (problem.items.some(({ alike }) => alike && !(alike.within < WIDEST))) return false
  const kept = choices.map(
    ({ ways }) =>
      (part: Reached) =>
        ways[part.item]?.[part.region]?.some(same(part.way)),
  )
  const free = waysOf(problem, (item) => item.alike === undefined)
  const holding = kept.map((has, c) => (free.every(has) ? c : -1)).filter((c) => c >= 0)
  const covers = (left: readonly string[], of: readonly number[]): boolean => {
    const [group, ...rest] = left
    if (of.length === 0) return false
    if (group === undefined) return true
    return setsOf(problem, group).every((set) => {
      work.spend(set.length)
      return covers(
        rest,
        of.filter((c) => set.every((part) => kept[c]?.(part))),
      )
    })
  }
  return covers(groups, holding)
}

/** An arc of lines is shorter than a third of the half circle: twice the reach of ways up to 10 wide, 10 off. */
const WIDEST: Deg = 15

interface Reached {
  readonly item: number
  readonly region: number
  readonly way: Way
}

function waysOf({ items }: PackingProblem, counts: (item: Item) => boolean): readonly Reached[] {
  return items.flatMap((item, i) =>
    counts(item) ? item.ways.flatMap((list, region) => list.map((way) => ({ item: i, region, way }))) : [],
  )
}

/** The largest sets of ways of a group that come near to one turn. */
function setsOf(problem: PackingProblem, group: string): readonly (readonly Reached[])[] {
  const all = waysOf(problem, (item) => item.alike?.group === group)
  const ends = all.flatMap(({ item, way }) => {
    const reach = way.tilt + (problem.items[item]?.alike?.within ?? 0)
    return [-reach, reach].flatMap((off) => [way.turn + off, way.turn + off + 180])
  })
  const at = [...new Set([0, 180, ...ends].map((end) => (((end % 360) + 360) % 360).toFixed(6)))]
  const sets = at.map((end) =>
    all.filter(({ item, region, way }) => {
      const round = problem.regions[region]?.headed ? 360 : 180
      const off = Math.abs(way.turn - Number(end)) % round
      return Math.min(off, round - off) <= way.tilt + (problem.items[item]?.alike?.within ?? 0) + ROUNDING
    }),
  )
  const largest = [...sets].sort((a, b) => b.length - a.length)
  return largest.filter(
    (set, k) => !largest.slice(0, k).some((larger) => set.every((part) => larger.includes(part))),
  )
}

function same(a: Way): (b: Way) => boolean {
  return (b) => a.turn === b.turn && a.tilt === b.tilt && a.mirrored === b.mirrored
}
