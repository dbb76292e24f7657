import { computed, effect, signal } from '@preact/signals'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { oddMeasures, roomAsked } from '../../core/planning/doubt.ts'
import { answersKept, answerTo, isAbort, knownAnswer, PRIORITY, questionKey } from './answers.ts'
import type { CheckQuery } from './check-query.ts'
import { query } from './check-state.ts'
import { findSpare, SPARE_SECONDS } from './find-spare.ts'
import { settings } from './settings-state.ts'
import { type LiveVerdict, signOf } from './verdict.ts'

/** Long enough for two keystrokes in a row to be one question. */
const PAUSE_MS = 220
const SECONDS = 10
const LONGER_SECONDS = 60

type Ask = Extract<CheckQuery, { ask: true }>

type Run =
  | { readonly state: 'running'; readonly placed: number; readonly of: number }
  | { readonly state: 'stopped' }
  | { readonly state: 'failed'; readonly what: string | null }
  /** `atBest`: the answer is to the query's `atBest`. `looking`: for more to spare. */
  | {
      readonly state: 'answered'
      readonly answer: CheckAnswer
      readonly atBest: boolean
      readonly looking: boolean
    }

const STARTING: Run = { state: 'running', placed: 0, of: 0 }
const run = signal<Run>(STARTING)
let abort = new AbortController()
let seed = 1

/** The verdict on what has been told so far, as it stands at this moment. */
export const live = computed<LiveVerdict>(() => {
  const asked = query.value
  if (!asked.ask) return { state: 'waiting', missing: asked.missing }
  const now = run.value
  if (now.state !== 'answered') return now
  const { byUsual, ifStretch, question } = asked
  const answer = now.atBest ? now.answer : latest(question, now.answer)
  const { tapeDoubt } = settings.value
  const verdict = {
    state: 'answered',
    sign: signOf(answer, question.garment, tapeDoubt),
    answer,
    roomAsked: roomAsked(question.garment, tapeDoubt),
    looking: now.looking,
    odd: oddMeasures(question.garment),
    byUsual,
    ifStretch,
  } as const
  if (ifStretch === null || verdict.sign === 'fits' || verdict.sign === 'doubt') return verdict
  if (now.atBest && answer.lay.verdict === 'cannot') return { ...verdict, ifStretch: null }
  // Undecided, or a "no" to a stretch only taken for granted: that is no verdict on this cloth.
  return { state: 'waiting', missing: 'stretch' }
})

/** As it is remembered by now: the table may have found more to spare for it. */
function latest(question: CheckQuestion, answer: CheckAnswer): CheckAnswer {
  answersKept.value
  const known = knownAnswer(question)
  return known?.lay.verdict === answer.lay.verdict ? known : answer
}

/** Keeps `live` up to date with what is told, until the returned function is called. */
export function startLiveCheck(): () => void {
  let asked = ''
  let pause: ReturnType<typeof setTimeout> | undefined
  const end = effect(() => {
    const next = query.value
    const key = next.ask ? questionKey(next.question) : ''
    if (key === asked) return
    asked = key
    clearTimeout(pause)
    abort.abort()
    if (!next.ask) return
    const known = next.atBest ? null : knownAnswer(next.question)
    if (known) void showAndFindSpare(next, known, SPARE_SECONDS)
    else {
      run.value = STARTING
      pause = setTimeout(() => void ask(next, SECONDS), PAUSE_MS)
    }
  })
  return () => {
    end()
    clearTimeout(pause)
    abort.abort()
  }
}

/** What is known stays. */
export function stopLiveCheck(): void {
  abort.abort()
  const now = run.peek()
  run.value = now.state === 'answered' ? { ...now, looking: false } : { state: 'stopped' }
}

/** Searches again, longer and from another start: for a lay, or where there is one for more to spare. */
export function searchLonger(): void {
  const asked = query.value
  if (!asked.ask) return
  seed += 1
  const now = run.peek()
  if (now.state === 'answered' && now.answer.lay.verdict === 'fits') {
    void showAndFindSpare(asked, latest(asked.question, now.answer), LONGER_SECONDS)
    return
  }
  abort.abort()
  run.value = STARTING
  void ask(asked, LONGER_SECONDS)
}

async function ask(asked: Ask, seconds: number): Promise<void> {
  abort = new AbortController()
  const { signal: stop } = abort
  const { question, atBest } = asked
  try {
    const first = await answered(question, seconds, stop)
    if (stop.aborted) return
    if (first.state === 'answered' && first.answer.lay.verdict === 'fits') {
      await showAndFindSpare(asked, first.answer, SPARE_SECONDS)
      return
    }
    const last = atBest ? await answered(atBest, seconds, stop) : first
    if (!stop.aborted) run.value = last.state === 'answered' ? { ...last, atBest: last !== first } : last
  } catch (reason) {
    if (!isAbort(reason)) run.value = { state: 'failed', what: null }
  }
}

/** Shows the answer, and corrects it while more to spare is found. */
function showAndFindSpare({ question }: Ask, answer: CheckAnswer, seconds: number): Promise<void> {
  abort.abort()
  abort = new AbortController()
  return findSpare(question, answer, abort.signal, { seed, seconds }, (better, looking) => {
    run.value = { state: 'answered', answer: better, atBest: false, looking }
  })
}

async function answered(question: CheckQuestion, seconds: number, stop: AbortSignal): Promise<Run> {
  const result = await answerTo(question, stop, {
    seed,
    seconds,
    priority: PRIORITY.live,
    race: true,
    spareAsked: 0,
    onProgress: ({ placed, of }) => {
      if (!stop.aborted) run.value = { state: 'running', placed, of }
    },
  })
  return result.ok
    ? { state: 'answered', answer: result.value, atBest: false, looking: false }
    : { state: 'failed', what: result.faults.map(({ message }) => message).join('; ') }
}
