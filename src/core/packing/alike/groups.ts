import type { TurnRange } from '../../base/turn-range.ts'
import { inCircle } from '../../base/turn-range.ts'
import type { Deg } from '../../base/units.ts'
import type { Way } from '../../geometry/types.ts'
import type { Item, PackingProblem } from '../problem.ts'
import { maximalCliques } from './cliques.ts'

/** A range of turns that some item of a group has in some region: what decides with which others it agrees. */
export interface Kind extends TurnRange {
  /** As in `Alike`. */
  readonly within: Deg
  /** The region is headed. */
  readonly headed: boolean
}

/** Items that turn alike, and the choices they have between them: each packing keeps to one of them. */
export interface Group {
  readonly name: string
  readonly choices: readonly Choice[]
}

export interface Choice {
  /** As `kindKey` writes them. */
  readonly kinds: ReadonlySet<string>
  /** Whatever turns are taken of these kinds, they agree: nothing is left to see to. */
  readonly settled: boolean
}

/** Degrees by which ranges may miss each other and still agree: a choice is never missed by a rounding. */
const ROUNDING: Deg = 1e-6

/**
 * The groups of a problem in which not every copy turns alike by itself. Lemma: two copies that turn alike lie in kinds that
 * agree, so all copies of a group lie in kinds of which every two agree, and those lie in one of the greatest such sets.
 */
export function groupsToSettle(problem: PackingProblem): readonly Group[] {
  const names = new Set(problem.items.flatMap(({ alike }) => alike?.group ?? []))
  return [...names].flatMap((name) => {
    const items = problem.items.filter(({ alike }) => alike?.group === name)
    if (items.reduce((sum, { copies }) => sum + copies, 0) < 2) return []
    const kinds = kindsOf(problem, items)
    const sets = maximalCliques(kinds.length, (i, j) => mayAgree(kinds[i] as Kind, kinds[j] as Kind))
    const choices = sets.map((set): Choice => {
      const chosen = set.map((k) => kinds[k] as Kind)
      return {
        kinds: new Set(chosen.map(kindKey)),
        settled: chosen.every((a) => chosen.every((b) => mustAgree(a, b))),
      }
    })
    return choices.length <= 1 && choices.every(({ settled }) => settled) ? [] : [{ name, choices }]
  })
}

function kindsOf({ regions }: PackingProblem, items: readonly Item[]): readonly Kind[] {
  const kinds = items.flatMap((item) =>
    item.ways.flatMap((ways, r) => ways.map((way) => kindOf(item, way, regions[r]?.headed === true))),
  )
  return [...new Map(kinds.map((kind) => [kindKey(kind), kind])).values()]
}

export function kindOf({ alike }: Item, { turn, tilt }: Way, headed: boolean): Kind {
  return { turn: inCircle(turn), tilt, within: alike?.within ?? 0, headed }
}

export function kindKey({ turn, tilt, within, headed }: Kind): string {
  return `${turn} ${tilt} ${within} ${headed}`
}

/** True if a turn of the one kind and one of the other may be alike. */
function mayAgree(a: Kind, b: Kind): boolean {
  return apart(a, b) <= a.tilt + b.tilt + a.within + b.within + ROUNDING
}

/** True if any turn of the one kind and any of the other are alike. */
function mustAgree(a: Kind, b: Kind): boolean {
  return apart(a, b) + a.tilt + b.tilt <= a.within + b.within + ROUNDING
}

/** Degrees between the middles of two kinds: of lines, or of directions where both have a head. */
function apart(a: Kind, b: Kind): Deg {
  return turnsApart(a.turn, b.turn, a.headed && b.headed)
}

/** Degrees between two turns: of lines, or of directions where `headed`. */
export function turnsApart(a: Deg, b: Deg, headed: boolean): Deg {
  const round = headed ? 360 : 180
  const off = Math.abs(a - b) % round
  return Math.min(off, round - off)
}
