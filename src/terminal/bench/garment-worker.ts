import { parentPort, workerData } from 'node:worker_threads'
import { deadlineAfter } from '../../core/base/deadline.ts'
import type { Garment } from '../../core/garments/index.ts'
import type { CheckQuestion } from '../../core/planning/check.ts'
import { checkQuestion } from '../../core/planning/check-question.ts'
import type { Lay } from '../../core/planning/lay.ts'

/** What the worker is started with: all of the question but the garments, which come one by one. */
export interface GarmentTask {
  readonly asked: Omit<CheckQuestion, 'garment'>
  readonly milliseconds: number
}

/** Answer to a garment; the first message, before any garment, is `ready`. */
export type GarmentReply = 'ready' | { readonly id: string; readonly verdict: Lay['verdict'] }

const { asked, milliseconds } = workerData as GarmentTask
const clock = () => performance.now()
const say = (reply: GarmentReply) => parentPort?.postMessage(reply)

function verdictOn(garment: Garment): Lay['verdict'] {
  const deadline = deadlineAfter(milliseconds, clock)
  const answer = checkQuestion({ ...asked, garment }, { seed: 1, clock, deadline, spareAsked: 0 })
  return answer.ok ? answer.value.lay.verdict : 'cannot'
}

parentPort?.on('message', (garment: Garment) => say({ id: garment.id, verdict: verdictOn(garment) }))
say('ready')
