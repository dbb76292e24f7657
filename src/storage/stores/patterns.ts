import type { Pattern } from '../../core/patterns/pattern.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import type { Kept } from '../schema.ts'
import { putRecord, readAll, removeRecord } from './collection.ts'

/** The user's own patterns, the last kept first. */
export function readPatterns(store: Store<unknown>): Promise<Reading<Kept<Pattern>>> {
  return readAll(store, 'patterns')
}

/** Stores a pattern, over the one of the same id if there is one. */
export function putPattern(store: Store<unknown>, pattern: Pattern): Promise<void> {
  return putRecord(store, 'patterns', pattern)
}

/** Deletes the pattern; nothing happens if there is none of that id. Projects have a copy of theirs. */
export function removePattern(store: Store<unknown>, id: string): Promise<void> {
  return removeRecord(store, 'patterns', id)
}
