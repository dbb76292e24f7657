import type { Result } from '../../core/base/result.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { type AskOptions, Solvers } from '../../workers/bridge.ts'
import { askRace } from '../../workers/race.ts'
import { keepLay, lastLay } from './last-lays.ts'

/** The page's one pool of solver workers. */
export const solvers = new Solvers()

/** Who goes first, and takes a worker from whom. */
export const PRIORITY = { table: 0, outcomes: 1, live: 2 } as const

/** Enough for a pattern's whole table twice over. */
const KEPT = 200

const answers = new Map<string, CheckAnswer>()
const stamps = new WeakMap<Pattern, number>()
let lastStamp = 0

/** The same text for the same question. A pattern counts by identity: an edited one is another object. */
export function questionKey({ pattern, ...rest }: CheckQuestion): string {
  let stamp = stamps.get(pattern)
  if (stamp === undefined) {
    lastStamp += 1
    stamp = lastStamp
    stamps.set(pattern, stamp)
  }
  return JSON.stringify([stamp, rest])
}

/** An answer given before; null when there is none. */
export function knownAnswer(question: CheckQuestion): CheckAnswer | null {
  return answers.get(questionKey(question)) ?? null
}

export interface AnswerOptions extends AskOptions<'check'> {
  /** True: if it is not settled soon, all the workers there are look for it. */
  readonly race?: boolean
}

/**
 * Has the question answered, and remembers the answer. Rejects with an AbortError when the signal aborts.
 * A `not-found` is remembered too; asking with more time asks anew. Begins with the last lay of a like question unless
 * another start is given.
 */
export async function answerTo(
  question: CheckQuestion,
  signal: AbortSignal,
  { race = false, ...asked }: AnswerOptions,
): Promise<Result<CheckAnswer>> {
  const known = lastLay(question)
  const options = { ...(known && { warmStart: known }), ...asked }
  const result = race
    ? await askRace(solvers, signal, 'check', question, options)
    : await solvers.ask(signal, 'check', question, options)
  if (result.ok) {
    keepLay(question, result.value)
    if (answers.size >= KEPT) answers.delete(answers.keys().next().value as string)
    answers.set(questionKey(question), result.value)
  }
  return result
}

/** True for the rejection that follows an abort; it is never an error to show. */
export function isAbort(reason: unknown): boolean {
  return reason instanceof DOMException && reason.name === 'AbortError'
}
