import type { Clock, Deadline } from '../base/deadline.ts'
import { seededRandom } from '../base/random.ts'
import type { PackingAnswer } from './answer.ts'
import { EFFORT } from './config.ts'
import type { CopyRef, PackingProblem, Placement } from './problem.ts'
import { type Layout, layoutPlacements, layoutServes } from './search/layout.ts'
import { createModel, type Model } from './search/model.ts'
import { searchLayout } from './search/portfolio.ts'
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
}

/**
 * Can every copy that is not optional be placed? Ends as soon as a lay is found, or at the deadline. With the
 * same problem and seed the answer is the same whenever the search ends before its deadline.
 */
export function solve(problem: PackingProblem, control: PackingControl): PackingAnswer {
  const model = createModel(problem)
  const { seed, deadline, onProgress, warmStart } = control
  const layout = searchLayout(model, EFFORT, {
    random: seededRandom(seed),
    deadline,
    ...(onProgress ? { onBetter: (better) => onProgress(packingFrom(model, better)) } : {}),
    ...(warmStart ? { warmStart: layoutFromPlacements(model, warmStart) } : {}),
  })
  return answerFrom(model, layout)
}

function answerFrom(model: Model, layout: Layout): PackingAnswer {
  const verdict = layoutServes(model, layout) ? 'fits' : 'not-found'
  return { verdict, ...packingFrom(model, layout) }
}

function packingFrom(model: Model, layout: Layout): PartialPacking {
  const leftOut = model.copies.filter((_, c) => !layout[c]).map(({ ref }) => ref)
  return { placements: layoutPlacements(model, layout), leftOut }
}
