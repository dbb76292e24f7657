import type { Worker } from 'node:worker_threads'
import { seededRandom } from '../../core/base/random.ts'
import { type Garment, KIND_IDS } from '../../core/garments/index.ts'
import type { Lay } from '../../core/planning/lay.ts'
import { nextMessage, startThread } from '../thread.ts'
import { demoPatterns } from './demo.ts'
import type { GarmentReply, GarmentTask } from './garment-worker.ts'
import { plausibleGarment } from './plausible-garment.ts'

/** One pattern against many garments, on two workers that have been started before. Milliseconds from asking. */
export interface GarmentsFigure {
  readonly pattern: string
  readonly garments: number
  /** Until the first rows stand in their order. */
  readonly firstRows: number
  readonly allRows: number
  /** Of both workers together: what an idle machine with two cores needs at least is half of it. */
  readonly processor: number
  readonly verdicts: Readonly<Record<Lay['verdict'], number>>
}

const PATTERN = { id: 'sports-top', version: 'bound', size: 'M' } as const
const WORKERS = 2
/** Rows that fill a phone's screen. */
const FIRST_ROWS = 10
/** For one garment: a first answer, which a closer look at the best ones may better. */
const MILLISECONDS = 10
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
  const task: GarmentTask = {
    asked: { pattern, version, size, roles: null, clearance: 0 },
    milliseconds: MILLISECONDS,
  }
  const waiting = garments(count)
  const threads = Array.from({ length: WORKERS }, () => startThread(ENTRY, task))
  await Promise.all(threads.map((thread) => nextMessage<GarmentReply>(thread)))
  const start = performance.now()
  const busy = process.cpuUsage()
  const verdicts = { fits: 0, cannot: 0, 'not-found': 0 }
  let rows = 0
  let firstRows = 0
  const work = async (thread: Worker) => {
    for (let garment = waiting.shift(); garment; garment = waiting.shift()) {
      const answer = nextMessage<GarmentReply>(thread)
      thread.postMessage(garment)
      const reply = await answer
      if (reply !== 'ready') verdicts[reply.verdict]++
      if (++rows === FIRST_ROWS) firstRows = performance.now() - start
    }
  }
  await Promise.all(threads.map(work))
  const allRows = performance.now() - start
  const { user, system } = process.cpuUsage(busy)
  await Promise.all(threads.map((thread) => thread.terminate()))
  const processor = (user + system) / 1000
  return {
    pattern: Object.values(PATTERN).join(' '),
    garments: count,
    firstRows,
    allRows,
    processor,
    verdicts,
  }
}
