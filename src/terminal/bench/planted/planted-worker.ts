import { parentPort } from 'node:worker_threads'
import { deadlineAfter } from '../../../core/base/deadline.ts'
import { answerLay } from '../../../core/planning/answer-lay.ts'
import type { Lay } from '../../../core/planning/lay.ts'
import type { LayProblem } from '../../../core/planning/lay-problem.ts'

export interface PlantedTask {
  readonly problem: LayProblem
  readonly seed: number
  readonly seconds: number
}

/** The first message, before any task, is `ready`. */
export type PlantedReply = 'ready' | Lay['verdict']

const clock = () => performance.now()
const say = (reply: PlantedReply) => parentPort?.postMessage(reply)

parentPort?.on('message', ({ problem, seed, seconds }: PlantedTask) => {
  const deadline = deadlineAfter(1000 * seconds, clock)
  say(answerLay(problem, { seed, clock, deadline, spareAsked: 0 }).verdict)
})
say('ready')
