import { deadlineAfter } from '../core/base/deadline.ts'
import { answerLay } from '../core/planning/answer-lay.ts'
import type { SolveControl, SolveProgress } from '../core/planning/check.ts'
import { checkQuestion } from '../core/planning/check-question.ts'
import type { JobRequest, WorkerReply } from './protocol.ts'

/** Least time between two reports of progress: a screen shows no more, and each one copies a whole part-lay. */
const PROGRESS_EVERY_MS = 100

/** Does one job to its end, which is blocking work, and tells its progress and then its answer or failure. */
export function runJob(request: JobRequest, tell: (reply: WorkerReply) => void, clock: () => number): void {
  const control: SolveControl = {
    seed: request.limits.seed,
    clock,
    deadline: deadlineAfter(request.limits.seconds * 1000, clock),
    onProgress: nowAndThen(clock, (progress) => tell({ type: 'progress', progress })),
  }
  try {
    tell({ type: 'done', answer: answerTo(request, control) })
  } catch (error) {
    tell({ type: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
}

function answerTo(request: JobRequest, control: SolveControl) {
  switch (request.kind) {
    case 'check':
      return checkQuestion(request.asks, control)
    case 'lay':
      return answerLay(request.asks, control)
  }
}

/** Passes the first report on, and then at most one in every `PROGRESS_EVERY_MS`. */
function nowAndThen(clock: () => number, report: (progress: SolveProgress) => void) {
  let next = Number.NEGATIVE_INFINITY
  return (progress: SolveProgress) => {
    const now = clock()
    if (now < next) return
    next = now + PROGRESS_EVERY_MS
    report(progress)
  }
}
