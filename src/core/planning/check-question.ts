import { sooner } from '../base/deadline.ts'
import type { Result } from '../base/result.ts'
import { ok } from '../base/result.ts'
import { answerLay } from './answer-lay.ts'
import type { CheckAnswer, CheckQuestion, Heads, SolveControl } from './check.ts'
import { layProblemFor } from './check-problem.ts'
import { clothMatch } from './cloth-match.ts'
import { knownLay } from './known-lay.ts'
import type { Lay } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'
import { biasFinding } from './on-bias.ts'
import { answerByStretch } from './stretch-doubt.ts'

/**
 * Answers a shop check. On a cloth with a pile the heads may all point up or all point down, so both are tried:
 * the first that fits wins, and `cannot` needs a proof for each. Lays known before are tried both ways before any search.
 */
export function checkQuestion(question: CheckQuestion, control: SolveControl): Result<CheckAnswer> {
  const headings: readonly Heads[] = question.garment.cloth.surface === 'one-way' ? ['up', 'down'] : ['up']
  const problems: Asked[] = []
  for (const heads of headings) {
    const problem = layProblemFor(question, heads)
    if (!problem.ok) return problem
    problems.push({ heads, problem: problem.value })
  }
  const [{ problem: first }] = problems as [Asked]
  const answer = answerByStretch(first, question.stretchDoubt, control, (ease, limits) =>
    eitherWay(
      problems.map(({ heads, problem }) => ({ heads, problem: ease(problem) })),
      limits,
    ),
  )
  const match = clothMatch(question.pattern, question.garment)
  const bias = answer.lay.verdict === 'fits' ? biasFinding(question) : undefined
  return ok({ ...answer, ...(bias && { stretch: bias }), ...(match && { match }) })
}

interface Asked {
  readonly heads: Heads
  readonly problem: LayProblem
}

/** The answer with the heads one way or the other: that of a lay known before, else whichever serves better. */
function eitherWay(asked: readonly Asked[], control: SolveControl): CheckAnswer {
  const isKnown = ({ problem, heads }: Asked) => knownLay(problem, knownFor(control, heads)) !== null
  const known = asked.length > 1 ? asked.find(isKnown) : undefined
  const problems = known ? [known] : asked
  let best: CheckAnswer | null = null
  for (const [i, { heads, problem }] of problems.entries()) {
    const share = control.deadline.left() / (problems.length - i)
    const deadline = sooner(control.deadline, share, control.clock)
    const lay = answerLay(problem, { ...knownFor(control, heads), deadline })
    const answer: CheckAnswer = { problem, lay, heads }
    if (lay.verdict === 'fits') return answer
    if (best === null || isBetter(lay, best.lay)) best = answer
  }
  return best as CheckAnswer
}

/** With only such known answers as have the panels lie the same way. */
function knownFor(control: SolveControl, heads: Heads): SolveControl {
  if (!control.known) return control
  return { ...control, known: control.known.filter((answer) => answer.heads === heads) }
}

/** Among answers that do not fit, an undecided one outranks a refuted one; of two undecided, the one that leaves out fewer. */
export function isBetter(lay: Lay, than: Lay): boolean {
  if (lay.verdict !== than.verdict) return lay.verdict === 'not-found'
  return lay.verdict === 'not-found' && lay.leftOut.length < than.leftOut.length
}
