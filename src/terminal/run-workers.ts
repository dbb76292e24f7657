import { setTimeout as pause } from 'node:timers/promises'
import { firstSettled } from '../core/planning/first-settled.ts'
import type { Lay } from '../core/planning/lay.ts'
import type { LayProblem } from '../core/planning/lay-problem.ts'
import { nextMessage, startThread } from './thread.ts'

/** What one worker is given. `endsAt` is a moment on Date's clock, the same in all threads. */
export interface LayTask {
  readonly problem: LayProblem
  readonly seed: number
  readonly endsAt: number
}

const WORKER = new URL('./lay-worker.ts', import.meta.url)

/** How long after the deadline the slower workers are waited for: an answer stands 0.3 s after it at the latest. */
const GRACE_MS = 200

/**
 * Several seeds at once, one thread each. The first `fits` or `cannot` wins; when time is up the part-lay that
 * leaves out the fewest copies, or the first answer at all if none has come yet. Rejects if every thread breaks.
 */
export async function answerInWorkers(
  problem: LayProblem,
  seed: number,
  workers: number,
  endsAt: number,
): Promise<Lay> {
  const threads = Array.from({ length: workers }, (_, i) =>
    startThread(WORKER, { problem, seed: seed + i, endsAt } satisfies LayTask),
  )
  const over = new AbortController()
  const timeUp = pause(Math.max(0, endsAt - Date.now()) + GRACE_MS, undefined, { signal: over.signal })
  try {
    const answers = threads.map((thread) => nextMessage<Lay>(thread))
    return await firstSettled(answers, (lay) => lay, timeUp)
  } finally {
    over.abort()
    await Promise.all(threads.map((thread) => thread.terminate()))
  }
}
