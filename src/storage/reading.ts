import type { Fault, Result } from '../core/base/result.ts'
import type { StoreName } from './schema.ts'

/** Validates what was read back; it may fill in what an older version of the app did not write. */
export type Gate<T> = (raw: unknown) => Result<T>

/** A record that does not pass its gate. It stays stored, untouched, and goes into every backup. */
export interface Unreadable {
  readonly store: StoreName
  readonly id: string
  readonly faults: readonly Fault[]
}

/** What could be read, and what could not. */
export interface Reading<T> {
  readonly records: readonly T[]
  readonly unreadable: readonly Unreadable[]
}
