import { signal } from '@preact/signals'
import type { Garment } from '../../core/garments/garment.ts'
import type { YieldRow } from '../../core/planning/donors/yields.ts'
import { takenOf } from '../../core/stash/taken.ts'
import { isAbort, PRIORITY, solvers } from './answers.ts'
import { clothRecords } from './cloth-state.ts'
import { allPatterns } from './patterns-state.ts'
import { settings } from './settings-state.ts'

const SECONDS = 20

/** What one garment would yield, as far as it is known. */
export interface YieldSearch {
  /** Id. */
  readonly garment: string
  readonly rows: readonly YieldRow[]
  readonly state: 'running' | 'ended' | 'failed'
}

export const yieldSearch = signal<YieldSearch | null>(null)

let abort = new AbortController()

/** Looks what the garment would yield of every pattern, likeliest first. */
export async function searchYields(garment: Garment): Promise<void> {
  abort.abort()
  abort = new AbortController()
  const { signal: stop } = abort
  const change = (part: Partial<YieldSearch>) => {
    const now = yieldSearch.peek()
    if (!stop.aborted && now) yieldSearch.value = { ...now, ...part }
  }
  yieldSearch.value = { garment: garment.id, rows: [], state: 'running' }
  const onProgress = (row: YieldRow) => {
    const others = yieldSearch.peek()?.rows.filter((other) => !isSame(other, row)) ?? []
    change({ rows: [...others, row] })
  }
  const from = { garment, taken: takenOf(garment.id, clothRecords.peek()) }
  const { clearance, stretchDoubt } = settings.peek()
  const asks = { patterns: allPatterns(), clearance, stretchDoubt, from }
  try {
    await solvers.ask(stop, 'yields', asks, {
      seed: 1,
      seconds: SECONDS,
      priority: PRIORITY.outcomes,
      onProgress,
    })
    change({ state: 'ended' })
  } catch (reason) {
    if (!isAbort(reason)) change({ state: 'failed' })
  }
}

/** Ends the search; what was found stays. */
export function stopYields(): void {
  abort.abort()
  const now = yieldSearch.peek()
  if (now?.state === 'running') yieldSearch.value = { ...now, state: 'ended' }
}

function isSame(one: YieldRow, other: YieldRow): boolean {
  return one.pattern === other.pattern && one.version === other.version && one.size === other.size
}
