import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { hasSpareToFind, isAbort, PRIORITY, spareOf } from './answers.ts'

/** What is to spare is counted in steps, most of them done in a second; this only ends it on what is hard. */
export const SPARE_SECONDS = 20

/**
 * Shows the answer, looks for more that it has to spare, and shows every better one as it is found: the screen never waits for
 * the figure. Nothing is shown once `stop` has aborted.
 */
export async function findSpare(
  question: CheckQuestion,
  answer: CheckAnswer,
  stop: AbortSignal,
  limits: { readonly seed: number; readonly seconds: number },
  show: (answer: CheckAnswer, looking: boolean) => void,
): Promise<void> {
  let best = answer
  const tell = (better: CheckAnswer, looking: boolean) => {
    best = better
    if (!stop.aborted) show(better, looking)
  }
  const more = hasSpareToFind(question, answer)
  tell(answer, more)
  if (!more) return
  try {
    const onBetter = (better: CheckAnswer) => tell(better, true)
    tell(await spareOf(question, answer, stop, { ...limits, priority: PRIORITY.live, onBetter }), false)
  } catch (reason) {
    // The lay stands, whatever became of the search for more.
    if (!isAbort(reason)) tell(best, false)
  }
}
