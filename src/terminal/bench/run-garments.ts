import type { Worker } from 'node:worker_threads'
import { seededRandom } from '../../core/base/random.ts'
import { type Garment, KIND_IDS } from '../../core/garments/index.ts'
import type { DonorVerdict } from '../../core/planning/donors/row.ts'
import { nextMessage, startThread } from '../thread.ts'
import { demoPatterns } from './demo.ts'
import type { GarmentReply, GarmentTask } from './garment-worker.ts'
import { plausibleGarment } from './plausible-garment.ts'

/** One pattern against many garments, on two workers that have been started before. Milliseconds from asking. */
export interface GarmentsFigure {
  readonly pattern: string
  readonly garments: number
  /** Until the first rows stand in their order, and until every garment has a row; 0 if that never came. */
  readonly firstRows: number
  readonly allRows: number
  /** Of both workers together until then: what an idle machine with two cores needs at least is half of it. */
  readonly processor: number
  /** When the time was up. */
  readonly verdicts: Readonly<Record<DonorVerdict, number>>
}

const PATTERN = { id: 'sports-top', version: 'bound', size: 'M' } as const
const WORKERS = 2
/** Rows that fill a phone's screen. */
const FIRST_ROWS = 10
/** For all: what is left of it after a first row of each garment goes to those that are undecided. */
export const MILLISECONDS = 20_000
/** Enough for the pattern, so that no garment is refused for its cloth. */
const STRETCH = { across: 60, along: 40 }

const KINDS = KIND_IDS.filter((id) => id !== 'free-outline')

/** `count` plausible garments of all measured kinds, by turns. */
export function garments(count: number): Garment[] {
  return Array.from({ length: count }, (_, i) => {
    const garment = plausibleGarment(KINDS[i % KINDS.length] as (typeof KINDS)[number], seededRandom(i + 1))
    return { ...garment, id: `garment ${i + 1}`, cloth: { ...garment.cloth, stretch: STRETCH } }
  })
}

const ENTRY = new URL('./garment-worker.ts', import.meta.url)

export async function runGarments(count: number): Promise<GarmentsFigure> {
  const pattern = demoPatterns().find(({ id }) => id === PATTERN.id)
  if (!pattern) throw new Error(`no pattern ${PATTERN.id}`)
  const { version, size } = PATTERN
  const question = { pattern, version, size, roles: null, clearance: 0, colours: {} }
  const task: GarmentTask = { question, milliseconds: MILLISECONDS }
  const all = garments(count)
  const threads = Array.from({ length: WORKERS }, () => startThread(ENTRY, task))
  await Promise.all(threads.map((thread) => nextMessage<GarmentReply>(thread)))
  const start = performance.now()
  const busy = process.cpuUsage()
  const rows = new Map<string, DonorVerdict>()
  const times = { firstRows: 0, allRows: 0, processor: 0 }
  const hear = (reply: GarmentReply) => {
    if (typeof reply === 'string') return
    rows.set(reply.donor, reply.verdict)
    if (rows.size === FIRST_ROWS) times.firstRows ||= performance.now() - start
    if (rows.size === count && times.allRows === 0) {
      times.allRows = performance.now() - start
      const { user, system } = process.cpuUsage(busy)
      times.processor = (user + system) / 1000
    }
  }
  await Promise.all(
    threads.map((thread, w) => {
      const part = all.filter((_, i) => i % WORKERS === w)
      return rowsFrom(thread, part, hear)
    }),
  )
  await Promise.all(threads.map((thread) => thread.terminate()))
  const verdicts = { fits: 0, cannot: 0, 'not-found': 0, undecided: 0 }
  for (const verdict of rows.values()) verdicts[verdict]++
  return { pattern: Object.values(PATTERN).join(' '), garments: count, ...times, verdicts }
}

/** Ends when the worker has told all its rows. */
function rowsFrom(
  thread: Worker,
  part: readonly Garment[],
  hear: (reply: GarmentReply) => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    thread.once('error', reject)
    thread.on('message', (reply: GarmentReply) => {
      hear(reply)
      if (reply === 'done') resolve()
    })
    thread.postMessage(part)
  })
}
