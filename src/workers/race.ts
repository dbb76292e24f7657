import type { SolveProgress } from '../core/planning/check.ts'
import { firstSettled } from '../core/planning/first-settled.ts'
import type { Lay } from '../core/planning/lay.ts'
import type { AskOptions, Solvers } from './bridge.ts'
import type { Jobs } from './protocol.ts'

/** Most questions are settled within this by one worker. */
const FIRST_TRY_MS = 300
/** How long after their time the slower workers are waited for. */
const GRACE_MS = 200
/** Far from the seeds that searching again goes on to. */
const SEED_STEP = 1000

type RacedKind = 'check' | 'lay'

/** The lay in an answer; null: none, for the question had faults. */
const LAY_IN: { readonly [K in RacedKind]: (answer: Jobs[K]['answers']) => Lay | null } = {
  check: (result) => (result.ok ? result.value.lay : null),
  lay: (lay) => lay,
}

/**
 * As `solvers.ask`, but when the answer does not come soon the other workers look for it too, each from a seed of its
 * own and from no known lays. The first to settle it wins and the others are ended. With a single worker, or an answer
 * that comes soon, it is the answer of the seed given.
 */
export async function askRace<K extends RacedKind>(
  solvers: Solvers,
  signal: AbortSignal,
  kind: K,
  asks: Jobs[K]['asks'],
  options: AskOptions<K>,
): Promise<Jobs[K]['answers']> {
  const over = new AbortController()
  const onAbort = () => over.abort(signal.reason)
  if (signal.aborted) onAbort()
  signal.addEventListener('abort', onAbort)
  const { seed, seconds, priority = 0, onProgress, warmStart, known, ...asked } = options
  const heard = { priority, onProgress: bestOnly(onProgress) }
  const further = async (k: number) => {
    await pause(FIRST_TRY_MS, over.signal)
    const limits = { seed: seed + SEED_STEP * k, seconds: seconds - FIRST_TRY_MS / 1000 }
    return solvers.ask(over.signal, kind, asks, { ...heard, ...asked, ...limits })
  }
  const first = solvers.ask(over.signal, kind, asks, {
    ...heard,
    ...asked,
    seed,
    seconds,
    ...(warmStart && { warmStart }),
    ...(known && { known }),
  })
  const tries = [first, ...Array.from({ length: solvers.most - 1 }, (_, k) => further(k + 1))]
  try {
    return await firstSettled(tries, LAY_IN[kind], pause(1000 * seconds + GRACE_MS, over.signal))
  } finally {
    signal.removeEventListener('abort', onAbort)
    over.abort()
  }
}

/** Passes on what is no worse than any worker has told before. */
function bestOnly(report: (progress: SolveProgress) => void = () => {}) {
  let most = 0
  return (progress: SolveProgress) => {
    if (progress.placed < most) return
    most = progress.placed
    report(progress)
  }
}

/** Rejects with the signal's reason when it aborts. */
function pause(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve, reject) => {
    if (signal.aborted) return reject(signal.reason)
    const timer = setTimeout(resolve, ms)
    signal.addEventListener('abort', () => {
      clearTimeout(timer)
      reject(signal.reason)
    })
  })
}
