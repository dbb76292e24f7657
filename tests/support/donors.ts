import { NO_DEADLINE } from '../../src/core/base/deadline.ts'
import type { Pattern } from '../../src/core/patterns/pattern.ts'
import { type Asked, askedOf, type DonorQuestion } from '../../src/core/planning/donors/asked.ts'
import type { Donor } from '../../src/core/planning/donors/donor.ts'
import type { FindControl } from '../../src/core/planning/donors/find-donors.ts'
import type { LayPanel } from '../../src/core/planning/lay-problem.ts'
import { panel, rectangle } from './lay-problems.ts'

/** Builders for donors in tests. */

export function donor(id: string, panels: readonly LayPanel[], more: Partial<Donor> = {}): Donor {
  return { id, panels, colour: '', price: null, ...more }
}

/** A donor of one rectangle. */
export function cloth(id: string, width: number, height: number, more: Partial<Donor> = {}): Donor {
  return donor(id, [panel(rectangle(width, height), { id: 'sheet' })], more)
}

export function asked(pattern: Pattern, more: Partial<DonorQuestion> = {}): Asked {
  const { id = '' } = pattern.versions[0] ?? {}
  const result = askedOf({ pattern, version: id, size: 'M', roles: null, clearance: 0, colours: {}, ...more })
  if (!result.ok) throw new Error(JSON.stringify(result.faults))
  return result.value
}

/** Looks that end by their own effort, never by the clock. */
export const UNHURRIED: FindControl = { seed: 1, clock: () => 0, deadline: NO_DEADLINE, passes: [] }

/** Passes whose looks may each look at the deadline a few times. */
export function counted(looks: number, passes: readonly number[]): FindControl {
  let now = 0
  const deadline = { passed: () => now >= looks, left: () => Math.max(0, looks - now) }
  return { seed: 1, clock: () => now++, deadline, passes }
}
