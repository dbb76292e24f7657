import type { DonorRow } from '../../core/planning/donors/row.ts'
import type { DonorsAsked, GarmentNow } from '../../workers/protocol.ts'
import { PRIORITY, solvers } from './answers.ts'

/** A stash of a thousand is looked through in a few seconds; what is undecided then gets the rest. */
const SECONDS = 30

/** Rows come by the hundred: the screen takes them up ten times a second. */
const SHOW_EVERY_MS = 100

/**
 * Has every worker look through its share of the garments. Resolves when all is settled or the time is over; rejects with an
 * AbortError once `stop` aborts, and tells nothing from then on.
 *
 * @param onRows A few rows at a time; a later row of a garment takes the place of its earlier one.
 */
export async function lookThrough(
  { question, from }: DonorsAsked,
  stop: AbortSignal,
  onRows: (rows: readonly DonorRow[]) => void,
): Promise<void> {
  const { onProgress, flush } = batches((rows) => {
    if (!stop.aborted) onRows(rows)
  })
  const settled = new Set<string>()
  const options = {
    seed: 1,
    seconds: SECONDS,
    priority: PRIORITY.outcomes,
    onProgress: (row: DonorRow) => {
      if (row.verdict !== 'undecided') settled.add(row.donor)
      onProgress(row)
    },
  }
  const ask = (part: readonly GarmentNow[]) => {
    const again = () => ({ question, from: part.filter(({ garment }) => !settled.has(garment.id)) })
    return solvers.ask(stop, 'donors', { question, from: part }, { ...options, again })
  }
  await Promise.all(shared(from).map(ask))
  flush()
}

/** One share of the garments a worker, dealt out in turn so that each has some of the likely ones. */
function shared(from: readonly GarmentNow[]): readonly (readonly GarmentNow[])[] {
  const hands = Math.max(1, Math.min(solvers.most, from.length))
  return Array.from({ length: hands }, (_, hand) => from.filter((_, k) => k % hands === hand))
}

function batches(onRows: (rows: readonly DonorRow[]) => void) {
  let waiting: DonorRow[] = []
  let timer: ReturnType<typeof setTimeout> | null = null
  const flush = () => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    const rows = waiting
    waiting = []
    onRows(rows)
  }
  const onProgress = (row: DonorRow) => {
    waiting.push(row)
    timer ??= setTimeout(flush, SHOW_EVERY_MS)
  }
  return { onProgress, flush }
}
