import { parentPort, workerData } from 'node:worker_threads'
import { deadlineAfter } from '../../core/base/deadline.ts'
import type { Garment } from '../../core/garments/index.ts'
import { askedOf, type DonorQuestion } from '../../core/planning/donors/asked.ts'
import { donorOf } from '../../core/planning/donors/donor.ts'
import { findDonors } from '../../core/planning/donors/find-donors.ts'
import type { DonorVerdict } from '../../core/planning/donors/row.ts'

/** What the worker is started with: all but the garments, which come in one message. */
export interface GarmentTask {
  readonly question: DonorQuestion
  readonly milliseconds: number
}

/** `ready` before any garment, then a row at a time, then `done`. */
export type GarmentReply = 'ready' | 'done' | { readonly donor: string; readonly verdict: DonorVerdict }

const { question, milliseconds } = workerData as GarmentTask
const say = (reply: GarmentReply) => parentPort?.postMessage(reply)
const clock = () => performance.now()

parentPort?.on('message', (garments: readonly Garment[]) => {
  const deadline = deadlineAfter(milliseconds, clock)
  const asked = askedOf(question)
  if (!asked.ok) throw new Error(JSON.stringify(asked.faults))
  for (const { donor, verdict } of findDonors(asked.value, donorsOf(garments, asked.value.clearance), {
    seed: 1,
    clock,
    deadline,
  }))
    say({ donor, verdict })
  say('done')
})
say('ready')

/** Made one by one: the first rows do not wait for the panels of all. */
function* donorsOf(garments: readonly Garment[], clearance: number) {
  for (const garment of garments) yield donorOf(garment, clearance)
}
