import { setTimeout as pause } from 'node:timers/promises'
import type { LayProblem } from '../../core/planning/lay-problem.ts'
import { nextMessage, startThread } from '../thread.ts'
import { quantile } from './figures.ts'
import { plantedProblem } from './planted/planted.ts'
import { puzzles } from './puzzles.ts'

/** What becomes of searches that are stopped in the midst of their work, milliseconds from the stop. */
export interface StoppingFigure {
  readonly stopped: number
  /** The most that any went on searching. */
  readonly wentOn: number
  /** Until the thread is gone, memory and all. */
  readonly goneMedian: number
  readonly goneMost: number
}

const ENTRY = new URL('./stopping-worker.ts', import.meta.url)
/** Stages of a search: setting up, building lays, pushing pieces apart. */
const AFTER_MS = [5, 30, 120, 300]

/** Stops hard searches at several moments, as the page does: it ends their thread. */
export async function runStopping(): Promise<StoppingFigure> {
  const tight = [1, 2, 3].map((seed) => plantedProblem(seed, { inset: 3, dropped: 0 }).problem)
  const stops: Stop[] = []
  for (const problem of [...puzzles(undefined), ...tight])
    for (const after of AFTER_MS) stops.push(...(await stopped(problem, after)))
  const gone = stops.map((stop) => stop.gone)
  return {
    stopped: stops.length,
    wentOn: Math.max(0, ...stops.map((stop) => stop.wentOn)),
    goneMedian: quantile(gone, 0.5),
    goneMost: Math.max(0, ...gone),
  }
}

interface Stop {
  readonly wentOn: number
  readonly gone: number
}

/** Nothing if the search had ended by then. */
async function stopped(problem: LayProblem, after: number): Promise<readonly Stop[]> {
  const beat = new Float64Array(new SharedArrayBuffer(Float64Array.BYTES_PER_ELEMENT))
  const thread = startThread(ENTRY, beat)
  await nextMessage<'ready'>(thread)
  let done = false
  thread.once('message', () => {
    done = true
  })
  thread.postMessage(problem)
  await pause(after)
  const start = performance.timeOrigin + performance.now()
  await thread.terminate()
  const gone = performance.timeOrigin + performance.now() - start
  return done ? [] : [{ wentOn: Math.max(0, (beat[0] as number) - start), gone }]
}
