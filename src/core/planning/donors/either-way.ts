import { sooner } from '../../base/deadline.ts'
import type { Percent } from '../../base/units.ts'
import { answerLay } from '../answer-lay.ts'
import type { CheckAnswer, Heads, SolveControl } from '../check.ts'
import { isBetter } from '../check-question.ts'
import type { LayPlacement } from '../lay.ts'
import type { LayProblem } from '../lay-problem.ts'
import { answerByStretch } from '../stretch-doubt.ts'
import { type Donor, headingsOn } from './donor.ts'

/** A lay known before, for one heading. */
export interface KnownStart {
  readonly heads: Heads
  readonly placements: readonly LayPlacement[]
}

/**
 * The answer with the heads up or, on cloth with a pile, down: whichever serves better, as checks have it; and with how its
 * stretch stands, if that may be off by the doubt.
 */
export function answerEitherWay(
  donor: Donor,
  problemFor: (heads: Heads) => LayProblem,
  control: SolveControl,
  start: KnownStart | null,
  stretchDoubt: Percent | undefined,
): CheckAnswer {
  return answerByStretch(problemFor('up'), stretchDoubt, control, (ease, limits) =>
    eitherWay(donor, (heads) => ease(problemFor(heads)), limits, start),
  )
}

function eitherWay(
  donor: Donor,
  problemFor: (heads: Heads) => LayProblem,
  control: SolveControl,
  start: KnownStart | null,
): CheckAnswer {
  const headings = headingsOn(donor)
  let best: CheckAnswer | null = null
  for (const [i, heads] of headings.entries()) {
    const problem = problemFor(heads)
    const share = control.deadline.left() / (headings.length - i)
    const lay = answerLay(problem, {
      ...control,
      deadline: sooner(control.deadline, share, control.clock),
      ...(start?.heads === heads ? { warmStart: start.placements } : {}),
    })
    const answer: CheckAnswer = { problem, lay, heads }
    if (lay.verdict === 'fits') return answer
    if (best === null || isBetter(lay, best.lay)) best = answer
  }
  return best as CheckAnswer
}
