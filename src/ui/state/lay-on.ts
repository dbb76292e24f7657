import { signal } from '@preact/signals'
import type { CheckQuestion } from '../../core/planning/check.ts'
import { roomAsked } from '../../core/planning/doubt.ts'
import { answerTo, isAbort, knownAnswer, PRIORITY } from './answers.ts'
import { settings } from './settings-state.ts'
import { type LiveVerdict, signOf } from './verdict.ts'

const SECONDS = 10

/** The verdict on the question asked last. */
export const layOn = signal<LiveVerdict>({ state: 'running', placed: 0, of: 0 })

/** Has the question answered, until the returned function is called. */
export function askLayOn(question: CheckQuestion): () => void {
  const stop = new AbortController()
  const known = knownAnswer(question)
  if (known) tell(question, known)
  else void ask(question, stop.signal)
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
      onProgress: ({ placed, of }) => {
        if (!stop.aborted) layOn.value = { state: 'running', placed, of }
      },
    })
    if (stop.aborted) return
    if (told.ok) tell(question, told.value)
    else layOn.value = { state: 'failed', what: told.faults.map(({ message }) => message).join('; ') }
  } catch (reason) {
    if (!isAbort(reason)) layOn.value = { state: 'failed', what: null }
  }
}

function tell({ garment }: CheckQuestion, answer: NonNullable<ReturnType<typeof knownAnswer>>): void {
  const { tapeDoubt } = settings.value
  layOn.value = {
    state: 'answered',
    sign: signOf(answer, garment, tapeDoubt),
    answer,
    roomAsked: roomAsked(garment, tapeDoubt),
    byUsual: false,
    ifStretch: null,
  }
}
