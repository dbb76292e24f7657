import { deadlineAfter } from '../../core/base/deadline.ts'
import type { CheckQuestion } from '../../core/planning/check.ts'
import { checkQuestion } from '../../core/planning/check-question.ts'
import { demoQuestions } from './demo.ts'
import { type Answered, type AnswerFigure, answerFigure } from './figures.ts'

/** What one check may take. */
export const CHECK_SECONDS = 3

const clock = () => performance.now()

/** Shop checks of the demo data one by one on one worker, spare and all. */
export function runChecks(sample: boolean): AnswerFigure {
  const questions = demoQuestions(sample)
  check(questions[0] as CheckQuestion)
  return answerFigure(questions.map(check))
}

function check(question: CheckQuestion): Answered {
  const start = clock()
  const answer = checkQuestion(question, {
    seed: 1,
    clock,
    deadline: deadlineAfter(1000 * CHECK_SECONDS, clock),
  })
  if (!answer.ok) throw new Error(JSON.stringify(answer.faults))
  return { verdict: answer.value.lay.verdict, ms: clock() - start }
}
