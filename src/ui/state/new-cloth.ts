import { signal } from '@preact/signals'
import type { Mm } from '../../core/base/units.ts'
import type { NewClothLength } from '../../core/planning/savings/new-cloth.ts'
import type { Project } from '../../core/stash/project.ts'
import { isAbort, PRIORITY, solvers } from './answers.ts'

const SECONDS = 3

/** What new cloth the project asked for last would take; null while it is being worked out. */
export const newClothTold = signal<readonly NewClothLength[] | null>(null)

/** Works it out, until the returned function is called. */
export function reckonNewCloth(project: Project, width: Mm): () => void {
  const stop = new AbortController()
  const { pattern, version, size, clearance } = project
  newClothTold.value = null
  const asks = { making: { pattern, version, size, clearance }, width }
  solvers
    .ask(stop.signal, 'new-cloth', asks, { seed: 1, seconds: SECONDS, priority: PRIORITY.table })
    .then((told) => {
      if (!stop.signal.aborted && told.ok) newClothTold.value = told.value
    })
    .catch((reason: unknown) => {
      if (!isAbort(reason)) throw reason
    })
  return () => stop.abort()
}
