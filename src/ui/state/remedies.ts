import { signal } from '@preact/signals'
import type { Garment } from '../../core/garments/index.ts'
import type { CheckAnswer } from '../../core/planning/check.ts'
import { isSaved } from '../../core/planning/remedies/short-of-stretch.ts'
import type { RemedyOutcome } from '../../core/planning/remedies/solve-remedies.ts'
import { answerTo, isAbort, PRIORITY } from './answers.ts'
import type { CheckDraft } from './check-draft.ts'
import { queryOf } from './check-query.ts'
import { draft, kind, pattern, tell } from './check-state.ts'
import { findSpare, SPARE_SECONDS } from './find-spare.ts'
import { outcomeSearch } from './outcomes.ts'
import { changeFor } from './remedy-change.ts'
import { settings } from './settings-state.ts'
import { offerUndo } from './undo.ts'

/** Rows stream in from the first moment; more time only decides what is hard. */
const SECONDS = 20
const ANSWER_SECONDS = 10

/** What would save the check, as it is solved. */
export const remedies = outcomeSearch('remedies', SECONDS, ({ rank }) => rank)

/** Those that save the check, the cheapest to her first. */
export function savingOf(asked: CheckAnswer, found: readonly RemedyOutcome[]): readonly RemedyOutcome[] {
  return inOrder(found.filter(({ answer }) => isSaved(asked, answer)))
}

/** Those that do not, or for which no way was found. */
export function inVainOf(asked: CheckAnswer, found: readonly RemedyOutcome[]): readonly RemedyOutcome[] {
  return inOrder(found.filter(({ answer }) => !isSaved(asked, answer)))
}

function inOrder(found: readonly RemedyOutcome[]): readonly RemedyOutcome[] {
  return [...found].sort((a, b) => a.rank - b.rank)
}

/** Makes the change in the check, to be taken back while nothing else has changed the same. `said`: what was done. */
export function takeRemedy(change: Partial<CheckDraft>, said: string): void {
  const before = draft.peek()
  const keys = Object.keys(change) as (keyof CheckDraft)[]
  tell(change)
  const undo = () => {
    const untouched = keys.filter((key) => draft.peek()[key] === change[key])
    tell(Object.fromEntries(untouched.map((key) => [key, before[key]])))
  }
  offerUndo(said, undo, 'tick')
}

/** The remedy being looked at. `looking`: for more that it has to spare. */
export interface ShownRemedy {
  readonly outcome: RemedyOutcome
  readonly garment: Garment
  readonly answer: CheckAnswer
  readonly looking: boolean
}

export const shownRemedy = signal<ShownRemedy | null>(null)

let abort = new AbortController()

/** Shows the lay that was found, and corrects it while more to spare is found. */
export async function showRemedy(outcome: RemedyOutcome): Promise<void> {
  hideRemedy()
  abort = new AbortController()
  const { signal: stop } = abort
  const question = questionOf(outcome)
  const { garment } = question
  const show = (answer: CheckAnswer, looking: boolean) => {
    if (!stop.aborted) shownRemedy.value = { outcome, garment, answer, looking }
  }
  show(outcome.answer, true)
  try {
    // As the check would ask it, which is the same lay at once.
    const again = await answerTo(question, stop, {
      seed: 1,
      seconds: ANSWER_SECONDS,
      priority: PRIORITY.live,
      warmStart: outcome.answer.lay.placements,
      spareAsked: 0,
    })
    if (!again.ok || again.value.lay.verdict !== 'fits') return show(outcome.answer, false)
    await findSpare(question, again.value, stop, { seed: 1, seconds: SPARE_SECONDS }, show)
  } catch (reason) {
    if (!isAbort(reason)) show(outcome.answer, false)
  }
}

export function hideRemedy(): void {
  abort.abort()
  shownRemedy.value = null
}

/** As the check would ask it with the change made, so that its verdict is known once she makes it. */
function questionOf({ remedy }: RemedyOutcome) {
  const change = changeFor(draft.peek(), remedy)
  if (change === null) return remedy.question
  const asked = queryOf({ ...draft.peek(), ...change }, pattern.peek(), kind.peek(), settings.peek())
  return asked.ask ? asked.question : remedy.question
}
