import type { Lay } from '../core/planning/lay.ts'
import type { LayProblem } from '../core/planning/lay-problem.ts'
import { startThread } from './thread.ts'

/** What one worker is given. `endsAt` is a moment on Date's clock, the same in all threads. */
export interface LayTask {
  readonly problem: LayProblem
  readonly seed: number
  readonly endsAt: number
}

const WORKER = new URL('./lay-worker.ts', import.meta.url)

/** How long after the deadline the slower workers are waited for. */
const GRACE_MS = 400

/**
 * Several seeds at once, one thread each. The first `fits` or `cannot` wins; when time is up the part-lay that
 * leaves out the fewest copies, or the first answer at all if none has come yet. Rejects if every thread breaks.
 */
export function answerInWorkers(
  problem: LayProblem,
  seed: number,
  workers: number,
  endsAt: number,
): Promise<Lay> {
  const threads = Array.from({ length: workers }, (_, i) =>
    startThread(WORKER, { problem, seed: seed + i, endsAt } satisfies LayTask),
  )
  const stopAll = () => Promise.all(threads.map((thread) => thread.terminate()))
  return new Promise<Lay>((resolve, reject) => {
    let best: Lay | null = null
    let open = threads.length
    let fault: unknown = new Error('no worker answered')
    const finish = () => {
      clearTimeout(timer)
      if (best) resolve(best)
      else reject(fault)
    }
    let late = false
    const timer = setTimeout(
      () => {
        late = true
        if (best) finish()
      },
      Math.max(0, endsAt - Date.now()) + GRACE_MS,
    )
    for (const thread of threads) {
      thread.on('message', (lay: Lay) => {
        if (best === null || lay.verdict !== 'not-found' || lay.leftOut.length < best.leftOut.length)
          best = lay
        if (late || lay.verdict !== 'not-found') finish()
      })
      thread.on('error', (error) => {
        fault = error
      })
      thread.on('exit', () => {
        open--
        if (open === 0) finish()
      })
    }
  }).finally(stopAll)
}
