import { signal } from '@preact/signals'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { type TableCell, tableOrder } from '../../core/planning/table-order.ts'
import { answerTo, hasSpareToFind, isAbort, knownAnswer, PRIORITY, spareOf } from './answers.ts'
import { queryOf } from './check-query.ts'
import { draft, kind, pattern } from './check-state.ts'
import { settings } from './settings-state.ts'

/** Less than the chosen cell gets: there may be thirty of them. */
const SECONDS_A_CELL = 4
const LIMITS = { seed: 1, seconds: SECONDS_A_CELL, priority: PRIORITY.table }

/** `stretch`: this version asks for a stretch that has not been told. */
export type CellState = { readonly state: 'running' | 'failed' | 'stretch' } | CheckAnswer

/** Answers by cell, filled one after another; a cell not there yet has no entry. */
export const table = signal<ReadonlyMap<string, CellState>>(new Map())
export const tableRuns = signal(false)

let abort = new AbortController()

export function cellKey({ version, size }: TableCell): string {
  return JSON.stringify([version, size])
}

/** Fills the table for the garment and pattern as told now, the chosen cell and its neighbours first. */
export async function fillTable(): Promise<void> {
  stopTable()
  const making = pattern.peek()
  if (!making) return
  abort = new AbortController()
  const { signal: stop } = abort
  table.value = new Map()
  tableRuns.value = true
  try {
    for (const cell of tableOrder(making, draft.peek())) await fillCell(cell, stop)
  } catch (reason) {
    if (!isAbort(reason)) throw reason
  } finally {
    if (!stop.aborted) tableRuns.value = false
  }
}

export function stopTable(): void {
  abort.abort()
  tableRuns.value = false
  drop(
    ...[...table.value].filter(([, cell]) => 'state' in cell && cell.state === 'running').map(([key]) => key),
  )
}

async function fillCell(cell: TableCell, stop: AbortSignal): Promise<void> {
  stop.throwIfAborted()
  const key = cellKey(cell)
  const asked = askedIn(cell)
  if (!asked.ask) return set(key, { state: 'failed' })
  // Stretch not told: only a "no" that holds however far the cloth stretches is a verdict.
  const question = asked.atBest ?? asked.question
  const known = knownAnswer(question)
  if (!known) set(key, { state: 'running' })
  try {
    const answer = known ? await withSpare(question, known, stop) : await cellAnswer(question, stop)
    const open = asked.atBest !== null && answer?.lay.verdict !== 'cannot'
    if (answer && !open) await liftSmaller(cell, stop)
    set(key, open ? { state: 'stretch' } : (answer ?? { state: 'failed' }))
  } catch (reason) {
    if (isAbort(reason)) throw reason
    set(key, { state: 'failed' })
  }
}

function askedIn(cell: TableCell) {
  return queryOf({ ...draft.peek(), ...cell }, pattern.peek(), kind.peek(), settings.peek())
}

/**
 * Smaller sizes of the version that show less to spare than this one has, from the nearest: their pieces lie within those of
 * its lay, so that the same is to be found for them. They are corrected before this one is shown.
 */
async function liftSmaller({ version, size }: TableCell, stop: AbortSignal): Promise<void> {
  const sizes = pattern.peek()?.sizes ?? []
  for (const smaller of sizes.slice(0, Math.max(0, sizes.indexOf(size))).reverse()) {
    const cell = { version, size: smaller }
    const asked = askedIn(cell)
    const shown = table.peek().get(cellKey(cell))
    const known = asked.ask && asked.atBest === null ? knownAnswer(asked.question) : null
    if (!asked.ask || !known || !shown || !('lay' in shown)) continue
    set(cellKey(cell), await withSpare(asked.question, known, stop))
  }
}

/** The answer with what more it has to spare, if it is not known yet to have all there is. */
async function withSpare(
  question: CheckQuestion,
  answer: CheckAnswer,
  stop: AbortSignal,
): Promise<CheckAnswer> {
  if (!hasSpareToFind(question, answer)) return answer
  return spareOf(question, answer, stop, LIMITS)
}

async function cellAnswer(question: CheckQuestion, stop: AbortSignal): Promise<CheckAnswer | null> {
  const result = await answerTo(question, stop, LIMITS)
  return result.ok ? result.value : null
}

function set(key: string, cell: CellState): void {
  table.value = new Map(table.value).set(key, cell)
}

/** Takes cells out again. */
function drop(...keys: readonly string[]): void {
  const left = new Map(table.value)
  for (const key of keys) left.delete(key)
  table.value = left
}
