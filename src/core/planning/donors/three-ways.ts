import type { DonorVerdict } from './row.ts'

/** Things parted by what is known of each: none is ever left out, and none is called a no without a proof. */
export interface ThreeWays<T> {
  readonly yields: readonly T[]
  readonly cannot: readonly T[]
  /** Neither a lay nor a proof: the longest look came to nothing, or the search ended before it. */
  readonly open: readonly T[]
  /** Still being looked at. */
  readonly waiting: readonly T[]
}

/**
 * Parts the things by their verdicts, each in the order given.
 *
 * @param verdictOf null: not looked at yet.
 * @param isOver No further look is to come.
 */
export function threeWays<T>(
  things: readonly T[],
  verdictOf: (thing: T) => DonorVerdict | null,
  isOver: boolean,
): ThreeWays<T> {
  const parts = { yields: [] as T[], cannot: [] as T[], open: [] as T[], waiting: [] as T[] }
  for (const thing of things) {
    const verdict = verdictOf(thing)
    if (verdict === 'fits') parts.yields.push(thing)
    else if (verdict === 'cannot') parts.cannot.push(thing)
    else if (verdict === 'not-found' || isOver) parts.open.push(thing)
    else parts.waiting.push(thing)
  }
  return parts
}
