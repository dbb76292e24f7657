import type { Clock, Deadline } from '../base/deadline.ts'
import { seededRandom } from '../base/random.ts'
import type { PackingAnswer, Refutation } from './answer.ts'
import { EFFORT, PROOF_SLICES } from './config.ts'
import { engineOf } from './engine/engine.ts'
import { glance } from './glance.ts'
import type { CopyRef, PackingProblem, Placement } from './problem.ts'
import { lateProofs, refuteEarly } from './proof/refute.ts'
import { type Layout, layoutPlacements, layoutServes } from './search/layout.ts'
import { createModel, itemsWithRoom, type Model } from './search/model.ts'
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
  const model = createModel(problem, engineOf(problem))
  if (control.glance) return answerFrom(model, glance(model, seededRandom(control.seed)))
  const search = searchSlices(model, EFFORT, searchControl(model, control))
  // A lay is often found sooner than any proof; only when the first try fails is it worth asking for one.
  let slice = search.next()
  if (slice.done && layoutServes(model, slice.value)) return answerFrom(model, slice.value)
  const early = refuteEarly(problem, itemsWithRoom(model))
  if (early) return { verdict: 'cannot', refutation: early }
  const proofs = lateProofs(problem)
  let refutation: Refutation | null | undefined
  while (!slice.done) {
    if (refutation === undefined) refutation = proofSlices(proofs, control.deadline)
    if (refutation) return { verdict: 'cannot', refutation }
    slice = search.next()
  }
  return answerFrom(model, slice.value)
}

/** Some slices of the late proofs: a refutation, null once there is none to be had, undefined while undecided. */
function proofSlices(
  proofs: Generator<void, Refutation | null>,
  deadline: Deadline,
): Refutation | null | undefined {
  for (let k = 0; k < PROOF_SLICES && !deadline.passed(); k++) {
    const { done, value } = proofs.next()
    if (done) return value
  }
  return undefined
}

function searchControl(model: Model, control: PackingControl): SearchControl {
  const { seed, deadline, onProgress, warmStart } = control
  let tilted: Model | null = null
  const tilts = model.problem.items.some(({ ways }) => ways.flat().some(({ tilt }) => tilt > 0))
  return {
    random: seededRandom(seed),
    deadline,
    ...(onProgress ? { onBetter: (better) => onProgress(packingFrom(model, better)) } : {}),
    ...(warmStart ? { warmStart: layoutFromPlacements(model, warmStart) } : {}),
    ...(tilts
      ? {
          tilted: () => {
            tilted ??= createModel(model.problem, engineOf(model.problem), 'tilted')
            return tilted
          },
        }
      : {}),
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
