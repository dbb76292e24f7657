import { signal } from '@preact/signals'
import type { Fault } from '../../core/base/result.ts'
import type { Lay } from '../../core/planning/lay.ts'
import type { LayProblem } from '../../core/planning/lay-problem.ts'
import { readProblem } from '../../readers/problem-file/read-problem.ts'
import { askRace } from '../../workers/race.ts'
import { words } from '../words/words.ts'
import { isAbort, PRIORITY, solvers } from './answers.ts'
import { SPARE_SECONDS } from './find-spare.ts'

/** Larger than any check that this app writes. */
const MOST_BYTES = 5_000_000
/** A phone need not search longer than this at one go, whatever the file asks for. */
const MOST_SECONDS = 60

export type Opened =
  | { readonly state: 'none' }
  | { readonly state: 'faults'; readonly faults: readonly Fault[] }
  | { readonly state: 'running'; readonly problem: LayProblem; readonly placed: number; readonly of: number }
  | { readonly state: 'stopped' | 'failed'; readonly problem: LayProblem }
  /** `looking`: for more that the lay has to spare. */
  | {
      readonly state: 'answered'
      readonly problem: LayProblem
      readonly lay: Lay
      readonly looking: boolean
    }

/** The shared check that is open; it stays while she looks elsewhere in the app. */
export const opened = signal<Opened>({ state: 'none' })

let abort = new AbortController()
let seed = 1

/** Opens a file she chose and begins to work out its verdict. */
export async function openFile(file: Blob): Promise<void> {
  abort.abort()
  const text = file.size > MOST_BYTES ? null : await file.text().catch(() => null)
  if (text === null) {
    const message = file.size > MOST_BYTES ? words.sharing.tooLarge : words.sharing.unreadable
    opened.value = { state: 'faults', faults: [{ field: 'document', message }] }
    return
  }
  const read = readProblem(text)
  if (!read.ok) {
    opened.value = { state: 'faults', faults: read.faults }
    return
  }
  seed = 1
  await solve(read.value, Math.min(read.value.seconds, MOST_SECONDS))
}

export function stopOpened(): void {
  const now = opened.value
  abort.abort()
  if (now.state === 'running') opened.value = { state: 'stopped', problem: now.problem }
  if (now.state === 'answered') opened.value = { ...now, looking: false }
}

/** Searches again, as long as may be, from another start: for a lay, or where there is one for more to spare. */
export function searchOpenedLonger(): void {
  const now = opened.value
  if (!('problem' in now)) return
  seed += 1
  if (now.state === 'answered' && now.lay.verdict === 'fits') {
    abort.abort()
    abort = new AbortController()
    void findSpare(now.problem, now.lay, MOST_SECONDS, abort.signal)
  } else void solve(now.problem, MOST_SECONDS)
}

async function solve(problem: LayProblem, seconds: number): Promise<void> {
  abort.abort()
  abort = new AbortController()
  const { signal: stop } = abort
  opened.value = { state: 'running', problem, placed: 0, of: 0 }
  try {
    const lay = await askRace(solvers, stop, 'lay', problem, {
      seed,
      seconds,
      priority: PRIORITY.live,
      spareAsked: 0,
      onProgress: ({ placed, of }) => {
        if (!stop.aborted) opened.value = { state: 'running', problem, placed, of }
      },
    })
    if (!stop.aborted) await findSpare(problem, lay, SPARE_SECONDS, stop)
  } catch (reason) {
    if (!isAbort(reason) && !stop.aborted) opened.value = { state: 'failed', problem }
  }
}

/** Shows the lay, and corrects it while more to spare is found. */
async function findSpare(problem: LayProblem, lay: Lay, seconds: number, stop: AbortSignal): Promise<void> {
  let best = lay
  const show = (better: Lay, looking: boolean) => {
    best = better
    if (!stop.aborted) opened.value = { state: 'answered', problem, lay: better, looking }
  }
  const more = lay.verdict === 'fits' && lay.spareIs === 'at-least'
  show(lay, more)
  if (!more) return
  try {
    const onProgress = (better: Lay) => show(better, true)
    const limits = { seed, seconds, priority: PRIORITY.live, onProgress }
    show(await solvers.ask(stop, 'spare', { problem, lay, stretchLeft: 0 }, limits), false)
  } catch (reason) {
    // The lay stands, whatever became of the search for more.
    if (!isAbort(reason)) show(best, false)
  }
}
