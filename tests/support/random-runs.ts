import { writeSync } from 'node:fs'

/**
 * How many random problems a truth test tries: `usual` in the ordinary run, or as many as `RANDOM_PROBLEMS` asks for in
 * a nightly one, up to this many.
 */
const MOST = 100_000

/** Written to directly: the test runner passes nothing on while a test holds the thread. */
const STDERR = 2

export interface RandomRuns {
  readonly count: number
  /** To be called after each problem: a nightly run says now and then how far it is. */
  tick(counts: Readonly<Record<string, number>>): void
}

export function randomRuns(name: string, usual: number): RandomRuns {
  const asked = process.env.RANDOM_PROBLEMS
  if (asked === undefined) return { count: usual, tick: () => {} }
  const count = Number(asked)
  if (!(Number.isInteger(count) && count >= 1 && count <= MOST))
    throw new Error(`RANDOM_PROBLEMS must be a whole number from 1 to ${MOST}, not “${asked}”`)
  const every = Math.max(1, Math.floor(count / 50))
  let done = 0
  return {
    count,
    tick: (counts) => {
      done++
      if (done % every === 0) writeSync(STDERR, `${name}: ${done} of ${count} ${JSON.stringify(counts)}\n`)
    },
  }
}
