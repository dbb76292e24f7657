import { type ReadonlySignal, signal } from '@preact/signals'
import type { AnsweredCheck, Jobs } from '../../workers/protocol.ts'
import { isAbort, PRIORITY, solvers } from './answers.ts'

type StreamedKind = 'remedies' | 'measures'

/** What a search that gives several outcomes has found so far, and for which check. */
export interface Outcomes<T> {
  readonly state: 'running' | 'stopped' | 'failed' | 'ended'
  readonly asked: AnsweredCheck | null
  /** In the order they came. */
  readonly found: readonly T[]
}

export interface OutcomeSearch<T> {
  readonly outcomes: ReadonlySignal<Outcomes<T>>
  /** Begins anew, unless the very same check was searched to the end before. The live check goes first. */
  look(asked: AnsweredCheck): Promise<void>
  /** Ends the search; what was found stays. */
  stop(): void
}

/**
 * A search in a worker whose outcomes are shown as they come. One with the same key takes the place of an earlier one:
 * a search that had to give up its worker begins again.
 */
export function outcomeSearch<K extends StreamedKind>(
  kind: K,
  seconds: number,
  keyOf: (outcome: Jobs[K]['tells']) => number | string,
): OutcomeSearch<Jobs[K]['tells']> {
  type Found = Outcomes<Jobs[K]['tells']>
  const outcomes = signal<Found>({ state: 'stopped', asked: null, found: [] })
  let abort = new AbortController()
  const change = (part: Partial<Found>) => {
    outcomes.value = { ...outcomes.peek(), ...part }
  }
  const stop = () => {
    abort.abort()
    if (outcomes.peek().state === 'running') change({ state: 'stopped' })
  }
  const look = async (asked: AnsweredCheck) => {
    const before = outcomes.peek()
    if (before.state === 'ended' && before.asked && isSame(before.asked, asked)) return
    stop()
    abort = new AbortController()
    const { signal: stopped } = abort
    change({ state: 'running', asked, found: [] })
    const onProgress = (outcome: Jobs[K]['tells']) => {
      const others = outcomes.peek().found.filter((other) => keyOf(other) !== keyOf(outcome))
      change({ found: [...others, outcome] })
    }
    try {
      await solvers.ask(stopped, kind, asked, { seed: 1, seconds, priority: PRIORITY.outcomes, onProgress })
      if (!stopped.aborted) change({ state: 'ended' })
    } catch (reason) {
      if (!isAbort(reason)) change({ state: 'failed' })
    }
  }
  return { outcomes, look, stop }
}

/** An answer belongs to one question, so the same answer is to the same question. */
function isSame(one: AnsweredCheck, other: AnsweredCheck): boolean {
  return one.answer === other.answer && one.doubt === other.doubt
}
