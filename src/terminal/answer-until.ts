import { deadlineAfter } from '../core/base/deadline.ts'
import { answerLay } from '../core/planning/answer-lay.ts'
import type { Lay } from '../core/planning/lay.ts'
import type { LayProblem } from '../core/planning/lay-problem.ts'

/** Answers the problem in this thread; `endsAt` is a moment on Date's clock. */
export function answerUntil(problem: LayProblem, seed: number, endsAt: number): Lay {
  const clock = () => performance.now()
  return answerLay(problem, { seed, clock, deadline: deadlineAfter(endsAt - Date.now(), clock) })
}
