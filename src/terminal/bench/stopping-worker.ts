import { parentPort, workerData } from 'node:worker_threads'
import { deadlineAfter } from '../../core/base/deadline.ts'
import { answerLay } from '../../core/planning/answer-lay.ts'
import type { LayProblem } from '../../core/planning/lay-problem.ts'

/** Memory that both threads see: when the search last looked at its clock, on Date's clock. */
const beat = workerData as Float64Array

const clock = () => {
  const now = performance.now()
  beat[0] = performance.timeOrigin + now
  return now
}

parentPort?.on('message', (problem: LayProblem) => {
  answerLay(problem, { seed: 1, clock, deadline: deadlineAfter(60_000, clock) })
  parentPort?.postMessage('done')
})
parentPort?.postMessage('ready')
