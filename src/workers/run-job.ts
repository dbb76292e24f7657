import { deadlineAfter } from '../core/base/deadline.ts'
import { answerLay } from '../core/planning/answer-lay.ts'
import { bindingMeasures } from '../core/planning/binding-measures.ts'
import type { SolveControl } from '../core/planning/check.ts'
import { checkQuestion } from '../core/planning/check-question.ts'
import { roomAsked } from '../core/planning/doubt.ts'
import { withSpare } from '../core/planning/lay-spare.ts'
import { solveRemedies } from '../core/planning/remedies/solve-remedies.ts'
import { newClothLengths } from '../core/planning/savings/new-cloth.ts'
import { shoppingBrief } from '../core/planning/shopping-brief/shopping-brief.ts'
import { withNeedsEased } from '../core/planning/stretch-doubt.ts'
import { clothFigures } from '../core/stash/cloth-figures.ts'
import { blockedWays, donorRows, yieldRows } from './donor-jobs.ts'
import type { AnsweredCheck, JobKind, JobRequest, Jobs, WorkerReply } from './protocol.ts'

/** Least time between two reports of progress: a screen shows no more, and each one copies a whole part-lay. */
const PROGRESS_EVERY_MS = 100

type Control = Pick<SolveControl, 'seed' | 'clock' | 'deadline' | 'warmStart' | 'known' | 'spareAsked'>
type Tell = (progress: Jobs[JobKind]['tells']) => void

/** Does one job to its end, which is blocking work, and tells its progress and then its answer or failure. */
export function runJob(request: JobRequest, tell: (reply: WorkerReply) => void, clock: () => number): void {
  const { seconds, ...start } = request.limits
  const control = { ...start, clock, deadline: deadlineAfter(seconds * 1000, clock) }
  try {
    const answer = answerTo(request, control, (progress) => tell({ type: 'progress', progress }))
    tell({ type: 'done', answer })
  } catch (error) {
    tell({ type: 'failed', message: error instanceof Error ? error.message : String(error) })
  }
}

function answerTo(request: JobRequest, control: Control, tell: Tell): Jobs[JobKind]['answers'] {
  switch (request.kind) {
    case 'check':
      return checkQuestion(request.asks, { ...control, onProgress: nowAndThen(control.clock, tell) })
    case 'lay':
      return answerLay(request.asks, { ...control, onProgress: nowAndThen(control.clock, tell) })
    case 'spare': {
      const { problem, lay, stretchLeft } = request.asks
      return withSpare(withNeedsEased(problem, -stretchLeft), lay, {
        ...control,
        onBetter: nowAndThen(control.clock, tell),
      })
    }
    case 'remedies':
      return tellAll(remediesOf(request.asks, control), tell)
    case 'measures': {
      const { question, answer, doubt } = request.asks
      return tellAll(bindingMeasures(question, answer, doubt, control), tell)
    }
    case 'brief':
      return shoppingBrief(request.asks, control, tell)
    case 'donors':
      return tellAll(donorRows(request.asks, control), tell)
    case 'blocking':
      return tellAll(blockedWays(request.asks, control), tell)
    case 'yields':
      return tellAll(yieldRows(request.asks, control), tell)
    case 'cloths':
      return request.asks.from.map(({ garment, taken }) => clothFigures(garment, taken, request.asks.clear))
    case 'new-cloth':
      return newClothLengths(request.asks.making, request.asks.width, control)
  }
}

function remediesOf({ question, answer, doubt }: AnsweredCheck, control: Control) {
  return solveRemedies(question, answer, { ...control, spareAsked: roomAsked(question.garment, doubt) })
}

/** Outcomes are few and each is awaited: all are told. */
function tellAll(outcomes: Iterable<Jobs[JobKind]['tells']>, tell: Tell): null {
  for (const outcome of outcomes) tell(outcome)
  return null
}

/** Passes the first report on, and then at most one in every `PROGRESS_EVERY_MS`. */
function nowAndThen<T>(clock: () => number, report: (progress: T) => void) {
  let next = Number.NEGATIVE_INFINITY
  return (progress: T) => {
    const now = clock()
    if (now < next) return
    next = now + PROGRESS_EVERY_MS
    report(progress)
  }
}
