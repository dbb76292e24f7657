import { sooner } from '../base/deadline.ts'
import type { Result } from '../base/result.ts'
import { ok } from '../base/result.ts'
import { answerLay } from './answer-lay.ts'
import type { CheckAnswer, CheckQuestion, Heads, SolveControl } from './check.ts'
import { layProblemFor } from './check-problem.ts'
import type { Lay } from './lay.ts'

/**
 * Answers a shop check. On a cloth with a pile the heads may all point up or all point down, so both are tried:
 * the first that fits wins, and `cannot` needs a proof for each.
 */
export function checkQuestion(question: CheckQuestion, control: SolveControl): Result<CheckAnswer> {
  const headings: readonly Heads[] = question.garment.cloth.surface === 'one-way' ? ['up', 'down'] : ['up']
  let best: CheckAnswer | null = null
  for (const [i, heads] of headings.entries()) {
    const problem = layProblemFor(question, heads)
    if (!problem.ok) return problem
    const share = control.deadline.left() / (headings.length - i)
    const lay = answerLay(problem.value, {
      ...control,
      deadline: sooner(control.deadline, share, control.clock),
    })
    const answer: CheckAnswer = { problem: problem.value, lay, heads }
    if (lay.verdict === 'fits') return ok(answer)
    if (best === null || isBetter(lay, best.lay)) best = answer
  }
  return ok(best as CheckAnswer)
}

/** Among answers that do not fit, an undecided one outranks a refuted one; of two undecided, the one that leaves out fewer. */
export function isBetter(lay: Lay, than: Lay): boolean {
  if (lay.verdict !== than.verdict) return lay.verdict === 'not-found'
  return lay.verdict === 'not-found' && lay.leftOut.length < than.leftOut.length
}
