import { deadlineAfter } from '../../core/base/deadline.ts'
import { answerLay } from '../../core/planning/answer-lay.ts'
import type { Lay } from '../../core/planning/lay.ts'
import type { LayProblem } from '../../core/planning/lay-problem.ts'

/** One problem, its answer and the time to it, milliseconds. */
export interface ProblemFigure {
  readonly name: string
  readonly verdict: Lay['verdict']
  /** What proves that it cannot be. */
  readonly proof: string | null
  readonly ms: number
}

const clock = () => performance.now()

/** Answers problems one by one on one worker. */
export function* runProblems(problems: readonly LayProblem[], seconds: number): Generator<ProblemFigure> {
  for (const problem of problems) {
    const deadline = deadlineAfter(1000 * seconds, clock)
    const lay = answerLay(problem, { seed: 1, clock, deadline, spareAsked: 0 })
    yield { name: problem.name, verdict: lay.verdict, proof: lay.reason?.kind ?? null, ms: lay.elapsedMs }
  }
}

export function problemRow({ name, verdict, proof, ms }: ProblemFigure): string {
  const by = proof === null ? '' : ` (${proof})`
  return `${name.padEnd(48)} ${`${verdict}${by}`.padEnd(20)} ${ms.toFixed(0).padStart(7)} ms`
}
