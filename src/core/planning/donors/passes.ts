import { NO_DEADLINE, sooner } from '../../base/deadline.ts'
import type { SolveControl } from '../check.ts'
import type { DonorRow } from './row.ts'

export interface PassControl {
  /** Milliseconds of each look after the glance, shortest first. */
  readonly passes: readonly number[]
}

/** A tenth of a second settles most that a glance does not; the rest is worth a second each. */
const PASSES: readonly number[] = [60, 300, 1200]
/** Seeds of later looks, far from those that searching again goes on to. */
const SEED_STEP = 1000

type Limits = Pick<SolveControl, 'seed' | 'clock' | 'deadline' | 'glance'>

/** What is looked at, and how. */
export interface Looks<Task, Row> {
  readonly control: Limits & Partial<PassControl>
  /** The row that a task has from before; null: none. */
  known(task: Task): Row | null
  look(task: Task, limits: Limits, before: Row | null, isLast: boolean): Row
  /** Negative if the first row is better. */
  compare(a: Row, b: Row): number
}

/**
 * A glance at every task, then a longer look at each that is undecided, the best rows first, and so on. Each row is
 * told as it comes. At the deadline it ends; a look that was cut short by it counts for nothing.
 */
export function* inPasses<Task, Row extends Pick<DonorRow, 'verdict' | 'looks'>>(
  tasks: Iterable<Task>,
  { control, known, look, compare }: Looks<Task, Row>,
): Generator<Row, void> {
  const { seed, clock, deadline, passes = PASSES } = control
  let open: { readonly task: Task; readonly row: Row }[] = []
  for (const task of tasks) {
    if (deadline.passed()) return
    const before = known(task)
    const glance = { seed, clock, deadline: NO_DEADLINE, glance: true }
    const row = before ?? look(task, glance, null, passes.length === 0)
    if (!before) yield row
    if (row.verdict === 'undecided') open.push({ task, row })
  }
  for (const [pass, ms] of passes.entries()) {
    const still: typeof open = []
    for (const { task, row } of open.sort((a, b) => compare(a.row, b.row))) {
      if (deadline.passed()) return
      if (row.looks > pass + 1) {
        still.push({ task, row })
        continue
      }
      const limits = { seed: seed + SEED_STEP * (pass + 1), clock, deadline: sooner(deadline, ms, clock) }
      const next = look(task, limits, row, pass === passes.length - 1)
      const isSettled = next.verdict === 'fits' || next.verdict === 'cannot'
      if (!isSettled && deadline.passed()) return
      yield next
      if (!isSettled) still.push({ task, row: next })
    }
    open = still
  }
}
