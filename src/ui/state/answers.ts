import { signal } from '@preact/signals'
import type { Result } from '../../core/base/result.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import { asksNoLess, mostToSpare } from '../../core/planning/asks-no-less.ts'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { stretchLeft } from '../../core/planning/doubt.ts'
import type { Lay } from '../../core/planning/lay.ts'
import type { StretchStanding } from '../../core/planning/stretch-doubt.ts'
import { type AskOptions, Solvers } from '../../workers/bridge.ts'
import { askRace } from '../../workers/race.ts'
import { keepLay, lastLay } from './last-lays.ts'
import { restWhenHidden } from './page-shown.ts'

/** The page's one pool of solver workers. */
export const solvers = new Solvers()
restWhenHidden(solvers)

/** Who goes first, and takes a worker from whom. */
export const PRIORITY = { table: 0, outcomes: 1, live: 2 } as const

/** Enough for a pattern's whole table twice over. */
const KEPT = 200

/** Less than this is no difference in what is to spare: figures are shown to a millimetre. */
const SAME_SPARE = 0.05

interface Kept {
  readonly question: CheckQuestion
  readonly answer: CheckAnswer
}

const answers = new Map<string, Kept>()
const stamps = new WeakMap<Pattern, number>()
let lastStamp = 0

/** Counts what is remembered: who shows a remembered answer looks again when it changes. */
export const answersKept = signal(0)

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

/** The best answer given before; null when there is none. */
export function knownAnswer(question: CheckQuestion): CheckAnswer | null {
  return answers.get(questionKey(question))?.answer ?? null
}

/** Remembers an answer, unless a better one to the same question is known: more to spare, or settled. Gives the better one. */
function keepAnswer(question: CheckQuestion, answer: CheckAnswer): CheckAnswer {
  const key = questionKey(question)
  const before = answers.get(key)?.answer
  const better = before && !isBetter(answer, before) ? before : answer
  keepLay(question, better)
  answers.delete(key)
  if (answers.size >= KEPT) answers.delete(answers.keys().next().value as string)
  answers.set(key, { question, answer: better })
  answersKept.value += 1
  return better
}

/** The surest first. */
const STRETCH_STANDINGS: readonly StretchStanding[] = ['sure', 'barely', 'just-under', 'unmeasured']

/** Of two true answers to one question: settled, sure of its stretch, more to spare. An undecided one that comes later was searched longer. */
function isBetter(answer: CheckAnswer, before: CheckAnswer): boolean {
  const [lay, than] = [answer.lay, before.lay]
  if (than.verdict === 'not-found') return true
  if (lay.verdict !== 'fits' || than.verdict !== 'fits') return lay.verdict === than.verdict
  const surer = stretchRank(before) - stretchRank(answer)
  if (surer !== 0) return surer > 0
  const more = (lay.spare ?? -1) - (than.spare ?? -1)
  return more > 0 || (more === 0 && than.spareIs === 'at-least')
}

function stretchRank({ stretch }: CheckAnswer): number {
  return STRETCH_STANDINGS.indexOf(stretch?.standing ?? 'sure')
}

/** What asks no less, in a larger size or of a smaller garment, and has most to spare. */
function harderAnswer(question: CheckQuestion): CheckAnswer | null {
  const harder = [...answers.values()].filter((kept) => asksNoLess(kept.question, question))
  return mostToSpare(harder.map(({ answer }) => answer))
}

/** Answers of which it was tried in vain to have as much to spare as another, with that other's figure. */
const triedFor = new WeakMap<CheckAnswer, number>()

/** True if more to spare may be found for this answer than it has: its search was cut short, or one that asks no less has more. */
export function hasSpareToFind(question: CheckQuestion, answer: CheckAnswer): boolean {
  const { verdict, spare, spareIs } = answer.lay
  if (verdict !== 'fits') return false
  const known = Math.max(spare ?? 0, triedFor.get(answer) ?? 0)
  return spareIs === 'at-least' || (harderAnswer(question)?.lay.spare ?? 0) > known + SAME_SPARE
}

export interface AnswerOptions extends AskOptions<'check'> {
  /** True: if it is not settled soon, all the workers there are look for it. */
  readonly race?: boolean
}

/**
 * Has the question answered, and remembers the answer. Rejects with an AbortError when the signal aborts.
 * A `not-found` is remembered too; asking with more time asks anew. Begins with the last lay of a like question unless
 * another start is given, and with the lay of one that asks no less.
 */
export async function answerTo(
  question: CheckQuestion,
  signal: AbortSignal,
  { race = false, ...asked }: AnswerOptions,
): Promise<Result<CheckAnswer>> {
  const last = lastLay(question)
  const harder = harderAnswer(question)
  const options = { ...(last && { warmStart: last }), ...(harder && { known: [harder] }), ...asked }
  const result = race
    ? await askRace(solvers, signal, 'check', question, options)
    : await solvers.ask(signal, 'check', question, options)
  return result.ok ? { ok: true, value: keepAnswer(question, result.value) } : result
}

export interface SpareOptions extends Pick<AskOptions<'spare'>, 'seed' | 'seconds' | 'priority'> {
  /** Called with every answer that has more to spare, as it is found. */
  readonly onBetter?: (answer: CheckAnswer) => void
}

/**
 * Looks for more that the answer, which fits, has to spare, and remembers what is found. Rejects with an AbortError when the
 * signal aborts; what was told until then stays.
 */
export async function spareOf(
  question: CheckQuestion,
  answer: CheckAnswer,
  signal: AbortSignal,
  { onBetter, ...limits }: SpareOptions,
): Promise<CheckAnswer> {
  const harder = harderAnswer(question)
  const { problem, heads, lay } = answer
  const keep = (better: Lay) => keepAnswer(question, { ...answer, lay: better })
  const asks = { problem, lay, stretchLeft: stretchLeft(answer, question.stretchDoubt) }
  const found = await solvers.ask(signal, 'spare', asks, {
    ...limits,
    ...(harder && harder.heads === heads && { known: [harder] }),
    onProgress: (better) => {
      const kept = keep(better)
      onBetter?.(kept)
    },
  })
  const kept = keep(found)
  if (harder) triedFor.set(kept, harder.lay.spare ?? 0)
  return kept
}

/** True for the rejection that follows an abort; it is never an error to show. */
export function isAbort(reason: unknown): boolean {
  return reason instanceof DOMException && reason.name === 'AbortError'
}
