import { signal } from '@preact/signals'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { oddMeasures, roomAsked } from '../../core/planning/doubt.ts'
import { answerTo, isAbort, knownAnswer, PRIORITY } from './answers.ts'
import { findSpare, SPARE_SECONDS } from './find-spare.ts'
import { settings } from './settings-state.ts'
import { type LiveVerdict, signOf } from './verdict.ts'

const SECONDS = 10

/** The verdict on the question asked last. */
export const layOn = signal<LiveVerdict>({ state: 'running', placed: 0, of: 0 })

/** Has the question answered, until the returned function is called. */
export function askLayOn(question: CheckQuestion): () => void {
  const stop = new AbortController()
  const known = knownAnswer(question)
  void (known ? showAndFindSpare(question, known, stop.signal) : ask(question, stop.signal))
  return () => stop.abort()
}

async function ask(question: CheckQuestion, stop: AbortSignal): Promise<void> {
  layOn.value = { state: 'running', placed: 0, of: 0 }
  try {
    const told = await answerTo(question, stop, {
      seed: 1,
      seconds: SECONDS,
      priority: PRIORITY.live,
      race: true,
      spareAsked: 0,
      onProgress: ({ placed, of }) => {
        if (!stop.aborted) layOn.value = { state: 'running', placed, of }
      },
    })
    if (stop.aborted) return
    if (told.ok) await showAndFindSpare(question, told.value, stop)
    else layOn.value = { state: 'failed', what: told.faults.map(({ message }) => message).join('; ') }
  } catch (reason) {
    if (!isAbort(reason)) layOn.value = { state: 'failed', what: null }
  }
}

function showAndFindSpare(question: CheckQuestion, answer: CheckAnswer, stop: AbortSignal): Promise<void> {
  return findSpare(question, answer, stop, { seed: 1, seconds: SPARE_SECONDS }, (better, looking) =>
    tell(question, better, looking),
  )
}

function tell({ garment }: CheckQuestion, answer: CheckAnswer, looking: boolean): void {
  const { tapeDoubt } = settings.value
  layOn.value = {
    state: 'answered',
    sign: signOf(answer, garment, tapeDoubt),
    answer,
    roomAsked: roomAsked(garment, tapeDoubt),
    looking,
    odd: oddMeasures(garment),
    byUsual: false,
    ifStretch: null,
  }
}
