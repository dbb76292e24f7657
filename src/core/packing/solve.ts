import type { Clock, Deadline } from '../base/deadline.ts'
import { seededRandom } from '../base/random.ts'
import type { Slices } from '../base/slices.ts'
import type { PackingAnswer, Refutation } from './answer.ts'
import { EFFORT, PROOF_SLICES } from './config.ts'
import { engineOf } from './engine/engine.ts'
import { glance } from './glance.ts'
import type { CopyRef, PackingProblem, Placement } from './problem.ts'
import { earlyProofs, lateProofs } from './proof/refute.ts'
import { type Layout, layoutPlacements, layoutServes } from './search/layout.ts'
import { createModel, itemsWithRoom, lacksRoom, type Model } from './search/model.ts'
import { type SearchControl, searchSlices } from './search/portfolio.ts'
import { layoutFromPlacements } from './search/transfer.ts'

/** The best lay so far, for a screen. */
export interface PartialPacking {
  readonly placements: readonly Placement[]
  readonly leftOut: readonly CopyRef[]
}

/** How long to search, from which seed, who listens, and where to begin. */
export interface PackingControl {
  readonly seed: number
  readonly deadline: Deadline
  readonly clock: Clock
  readonly onProgress?: (best: PartialPacking) => void
  /** A lay, or a part of one, of a similar problem: where the search begins. */
  readonly warmStart?: readonly Placement[]
  /** Only what takes some milliseconds is tried. Absent: everything, until the deadline. */
  readonly glance?: boolean
}

/**
 * Can every copy that is not optional be placed? Ends as soon as a lay or a refutation is found, or at the
 * deadline. Search and proofs take turns in a fixed order, so with the same problem and seed the answer is the
 * same whenever they end before the deadline.
 */
export function solve(problem: PackingProblem, control: PackingControl): PackingAnswer {
  const exact = createModel(problem, engineOf(problem))
  if (control.glance) return answerFrom(exact, glance(exact, seededRandom(control.seed), control.deadline))
  const tilted = tiltedOf(problem)
  // What has room only when it is tilted is no part of any lay of exact turns.
  const model = (lacksRoom(exact, control.deadline) && tilted?.()) || exact
  const search = searchSlices(model, EFFORT, searchControl(model, tilted, control))
  // A lay is often found sooner than any proof; only when the first try fails is it worth asking for one.
  let slice = search.next()
  const proofs = allProofs(model, control.deadline)
  let refutation: Refutation | null | undefined
  while (!slice.done) {
    if (refutation === undefined) refutation = proofSlices(proofs, control.deadline)
    if (refutation) return { verdict: 'cannot', refutation }
    slice = search.next()
  }
  return answerFrom(model, slice.value)
}

function* allProofs(model: Model, deadline: Deadline): Slices<Refutation | null> {
  const { problem } = model
  return (yield* earlyProofs(problem, itemsWithRoom(model, deadline))) ?? (yield* lateProofs(problem))
}

/** Some slices of the proofs: a refutation, null once there is none to be had, undefined while undecided. */
function proofSlices(proofs: Slices<Refutation | null>, deadline: Deadline): Refutation | null | undefined {
  for (let k = 0; k < PROOF_SLICES && !deadline.passed(); k++) {
    const { done, value } = proofs.next()
    if (done) return value
  }
  return undefined
}

/** The same problem with tilted turns too, made once when it is asked for; null if nothing may be tilted. */
function tiltedOf(problem: PackingProblem): (() => Model) | null {
  if (!problem.items.some(({ ways }) => ways.flat().some(({ tilt }) => tilt > 0))) return null
  let model: Model | null = null
  return () => {
    model ??= createModel(problem, engineOf(problem), 'tilted')
    return model
  }
}

function searchControl(model: Model, tilted: (() => Model) | null, control: PackingControl): SearchControl {
  const { seed, deadline, onProgress, warmStart } = control
  return {
    random: seededRandom(seed),
    deadline,
    ...(onProgress ? { onBetter: (better) => onProgress(packingFrom(model, better)) } : {}),
    ...(warmStart ? { warmStart: layoutFromPlacements(model, warmStart) } : {}),
    ...(tilted ? { tilted } : {}),
  }
}

function answerFrom(model: Model, found: Layout | Refutation): PackingAnswer {
  if ('kind' in found) return { verdict: 'cannot', refutation: found }
  const layout = found
  const verdict = layoutServes(model, layout) ? 'fits' : 'not-found'
  return { verdict, ...packingFrom(model, layout) }
}

function packingFrom(model: Model, layout: Layout): PartialPacking {
  const leftOut = model.copies.filter((_, c) => !layout[c]).map(({ ref }) => ref)
  return { placements: layoutPlacements(model, layout), leftOut }
}
