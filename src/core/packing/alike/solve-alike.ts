import { sooner } from '../../base/deadline.ts'
import type { Deg } from '../../base/units.ts'
import type { PackingAnswer, RefutedChoice } from '../answer.ts'
import { ALIKE } from '../config.ts'
import type { PackingProblem, Placement } from '../problem.ts'
import { refuteByArea } from '../proof/area.ts'
import { type PackingControl, type PartialPacking, solve } from '../solve.ts'
import { unplaced } from '../taken-over.ts'
import { agreeing, groupAtOdds } from './agreeing.ts'
import { type Group, groupsToSettle } from './groups.ts'
import { commonTurn, mayLie, turnedTo, withChoice } from './restrict.ts'

/**
 * As `solve`, with items that turn alike (`Item.alike`): a lay is one of all its rules, and a refutation may have one part
 * for each choice of turns. How a group turns is decided outside the search. First the problem is solved as if every copy
 * were free: mostly that lay turns alike as it is, and what is refuted even so is refuted. Only where copies are at odds
 * is one group's choice made after another, each a problem with fewer turns (branch and bound); `cannot` is said when all
 * choices are refuted. Turns of which there is a continuum are tried as they come, and prove nothing.
 */
export function solveAlike(problem: PackingProblem, control: PackingControl): PackingAnswer {
  const groups = groupsToSettle(problem)
  if (groups.length === 0) return solve(problem, control)
  const found = new AlikeSearch(problem).explore({ problem, groups, loose: [] }, control)
  if ('leaves' in found) return refuted(problem, found.leaves)
  return found
}

/** A problem with some choices made. */
interface Node {
  readonly problem: PackingProblem
  /** Groups whose choice is open. */
  readonly groups: readonly Group[]
  /** Groups whose choice is made and leaves a range of turns that need not be alike. */
  readonly loose: readonly string[]
}

type Placed = Exclude<PackingAnswer, { verdict: 'cannot' }>
type Found = Placed | { readonly leaves: readonly RefutedChoice[] }

class AlikeSearch {
  readonly #whole: PackingProblem

  constructor(whole: PackingProblem) {
    this.#whole = whole
  }

  explore(node: Node, control: PackingControl): Found {
    const mayBranch = node.groups.length + node.loose.length > 0
    const answer = this.#solved(node, mayBranch ? shareOf(control, ALIKE.share) : control)
    if (answer.verdict === 'cannot')
      return { leaves: [{ ways: node.problem.items.map(({ ways }) => ways), refutation: answer.refutation }] }
    const part = this.#agreeingPart(answer.placements)
    const verdict = this.#missing(part) === 0 ? 'fits' : 'not-found'
    const found = { verdict, ...part } as const
    const isWhole = verdict === 'fits' && part.placements.length === answer.placements.length
    return isWhole || !mayBranch ? found : this.#branched(node, answer.placements, found, control)
  }

  #solved({ problem }: Node, control: PackingControl): PackingAnswer {
    const refutation = deadEnd(problem) ?? refuteByArea(problem)
    if (refutation) return { verdict: 'cannot', refutation }
    const { onProgress, ...rest } = control
    return solve(problem, {
      ...rest,
      ...(onProgress
        ? { onProgress: (best: PartialPacking) => onProgress(this.#agreeingPart(best.placements)) }
        : {}),
    })
  }

  /** The children one after another, until one fits. `before`: of the lay of their parent what turns alike. */
  #branched(node: Node, start: readonly Placement[], before: Placed, control: PackingControl): Found {
    const { children, isAll } = childrenOf(node, start)
    const leaves: RefutedChoice[] = []
    let best = before
    let open = !isAll || before.verdict === 'fits'
    for (const [k, child] of children.entries()) {
      if (control.deadline.passed()) return best
      const found = this.explore(child, { ...shareOf(control, 1 / (children.length - k)), warmStart: start })
      if ('leaves' in found) {
        leaves.push(...found.leaves)
        continue
      }
      open = true
      if (this.#isBetter(found, best)) best = found
      if (best.verdict === 'fits') return best
    }
    return open ? best : { leaves }
  }

  #agreeingPart(placements: readonly Placement[]): PartialPacking {
    const kept = agreeing(this.#whole, placements)
    return { placements: kept, leftOut: unplaced(this.#whole, kept) }
  }

  #isBetter(a: PartialPacking, b: PartialPacking): boolean {
    return (this.#missing(a) - this.#missing(b) || a.leftOut.length - b.leftOut.length) < 0
  }

  #missing({ leftOut }: PartialPacking): number {
    return leftOut.filter(({ item }) => this.#whole.items[item]?.optional === false).length
  }
}

function shareOf(control: PackingControl, share: number): PackingControl {
  const { deadline, clock } = control
  return share === 1 ? control : { ...control, deadline: sooner(deadline, deadline.left() * share, clock) }
}

/** An item that must be placed and has no turn left: of a choice that is none for it. */
function deadEnd({ items }: PackingProblem) {
  const item = items.findIndex(({ optional, ways }) => !optional && ways.every((list) => list.length === 0))
  if (item < 0) return null
  return { kind: 'piece', items: [item], figures: {}, certificate: { by: 'no-place', item } as const }
}

interface Children {
  readonly children: readonly Node[]
  /** True if every packing of the node is one of a child. */
  readonly isAll: boolean
}

/** The choices of one group, that of copies at odds first; or, where all are made, turns for one that is loose. */
function childrenOf({ problem, groups, loose }: Node, start: readonly Placement[]): Children {
  const odd = groupAtOdds(problem, start)
  const group = groups.find(({ name }) => name === odd) ?? (loose.includes(odd ?? '') ? undefined : groups[0])
  if (!group) {
    const name = odd !== null && loose.includes(odd) ? odd : (loose[0] as string)
    const rest = { groups, loose: loose.filter((one) => one !== name) }
    const children = turnsToTry(problem, name, start).map((turn) => ({
      ...rest,
      problem: turnedTo(problem, name, turn),
    }))
    return { children, isAll: false }
  }
  const others = groups.filter((one) => one !== group)
  const children = group.choices.map(
    (choice): Node => ({
      problem: withChoice(problem, group.name, choice),
      groups: others,
      loose: choice.settled ? loose : [...loose, group.name],
    }),
  )
  const kept = (child: Node) => start.filter((placement) => mayLie(child.problem, placement)).length
  return { children: [...children].sort((a, b) => kept(b) - kept(a)), isAll: true }
}

/** Turns that copies have where they lie, then the grain and square to it. */
function turnsToTry(problem: PackingProblem, name: string, start: readonly Placement[]): readonly Deg[] {
  const own = start.filter(({ item }) => problem.items[item]?.alike?.group === name)
  const held = [...new Set([commonTurn(problem, agreeing(problem, own)), ...own.map(({ turn }) => turn)])]
  const heads = problem.regions.some(({ headed }) => headed) ? [0, 180, 90, 270] : [0, 90]
  return [...new Set([...held.slice(0, ALIKE.turns), ...heads])]
}

function refuted(problem: PackingProblem, leaves: readonly RefutedChoice[]): PackingAnswer {
  const [only] = leaves
  const { items } = problem
  // Refuted before any choice was made: the proof is one of the whole.
  if (leaves.length === 1 && only?.ways.every((ways, i) => ways === items[i]?.ways))
    return { verdict: 'cannot', refutation: only.refutation }
  const named = [...new Set(leaves.flatMap(({ refutation }) => refutation.items))].sort((a, b) => a - b)
  const figures = { choices: leaves.length }
  return {
    verdict: 'cannot',
    refutation: { kind: 'alike', items: named, figures, certificate: { by: 'alike', choices: leaves } },
  }
}
