import { effect, signal } from '@preact/signals'
import type { Garment } from '../../core/garments/garment.ts'
import { askedOf, type DonorQuestion } from '../../core/planning/donors/asked.ts'
import type { DonorRow, DonorVerdict } from '../../core/planning/donors/row.ts'
import { oddMeasures } from '../../core/planning/doubt.ts'
import { takenOf } from '../../core/stash/taken.ts'
import { isAbort } from './answers.ts'
import { lookThrough } from './donor-rows.ts'
import { hangOnStretch, type LookState, lookState, verdicts, yieldAsk, yieldQuestion } from './stash-yield.ts'
import { garmentKey } from './stash-yield-key.ts'
import { recordsOf } from './taken-now.ts'

/** She types on: a search begins when she pauses. */
const PAUSE_MS = 200

interface Run {
  readonly stop: AbortController
  readonly garments: ReadonlySet<string>
}

/** What the verdicts that are known answer. */
let asked: DonorQuestion | null = null
let run: Run | null = null
let pause: ReturnType<typeof setTimeout> | undefined
/** By her, or by a fault: it goes on when she says so. */
const halted = signal(false)

/**
 * Looks what the garments yield for as long as they are shown, anew whenever the question, the garments or what is taken
 * of them change. What is settled already is not looked at again.
 *
 * @param garments Reads signals.
 * @returns Ends the looking; what was found stays.
 */
export function followYields(garments: () => readonly Garment[]): () => void {
  const unfollow = effect(() => {
    const now = yieldQuestion.value
    if (now !== asked) askAnew(now)
    const open = now ? garments().filter((garment) => !isSettled(garment)) : []
    clearTimeout(pause)
    if (halted.value) return
    if (now === null) lookState.value = yieldAsk.value ? 'waiting' : 'ended'
    else if (!isUnderWay(open)) {
      end()
      lookState.value = open.length > 0 ? 'running' : 'ended'
      if (open.length > 0) pause = setTimeout(() => void lookAt(now, open), PAUSE_MS)
    }
  })
  return () => {
    unfollow()
    end()
  }
}

/** Ends the search; what was found stays, and what was not looked at to the end is open. */
export function stopLooking(): void {
  halted.value = true
  end()
  lookState.value = 'stopped'
}

export function lookOn(): void {
  halted.value = false
}

/** What was found for another question goes. A question that the pattern no longer answers is dropped. */
function askAnew(now: DonorQuestion | null): void {
  end()
  asked = now
  halted.value = false
  verdicts.value = new Map()
  hangOnStretch.value = new Set()
  if (now && !askedOf(now).ok) yieldAsk.value = null
}

function end(): void {
  clearTimeout(pause)
  run?.stop.abort()
  run = null
}

function isUnderWay(open: readonly Garment[]): boolean {
  return (
    run !== null &&
    open.length > 0 &&
    open.every((garment) => run?.garments.has(garmentKey(garment, recordsOf(garment))))
  )
}

/** A longer look at these is not worth it. Reads nothing that a search changes. */
function isSettled(garment: Garment): boolean {
  const verdict = verdicts.peek().get(garmentKey(garment, recordsOf(garment)))
  return verdict !== undefined && verdict !== 'undecided'
}

async function lookAt(question: DonorQuestion, garments: readonly Garment[]): Promise<void> {
  const from = garments.map((garment) => ({ garment, taken: takenOf(garment.id, recordsOf(garment)) }))
  const keys = new Map(garments.map((garment) => [garment.id, garmentKey(garment, recordsOf(garment))]))
  const odd = new Set(garments.filter((garment) => oddMeasures(garment).length > 0).map(({ id }) => id))
  const stop = new AbortController()
  run = { stop, garments: new Set(keys.values()) }
  try {
    await lookThrough({ question, from }, stop.signal, (rows) => take(rows, keys, odd))
    over(stop, 'ended')
  } catch (reason) {
    if (!isAbort(reason)) over(stop, 'failed')
  }
}

function over(stop: AbortController, state: LookState): void {
  if (run?.stop !== stop) return
  run = null
  halted.value = state === 'failed'
  lookState.value = state
}

function take(rows: readonly DonorRow[], keys: ReadonlyMap<string, string>, odd: ReadonlySet<string>): void {
  const now = new Map(verdicts.peek())
  const hanging = new Set(hangOnStretch.peek())
  for (const row of rows) {
    const key = keys.get(row.donor) ?? row.donor
    now.set(key, knownOf(row, odd.has(row.donor)))
    if (row.stretch === 'barely' || row.stretch === 'just-under') hanging.add(key)
    else hanging.delete(key)
  }
  verdicts.value = now
  hangOnStretch.value = hanging
}

/** A lay on cloth that must stretch and was never measured says neither yes nor no, and nor does any answer by a measure that is rare. */
function knownOf({ verdict, stretch }: DonorRow, isOdd: boolean): DonorVerdict {
  const isSettled = verdict === 'fits' || verdict === 'cannot'
  return (isOdd && isSettled) || (verdict === 'fits' && stretch === 'unmeasured') ? 'not-found' : verdict
}
