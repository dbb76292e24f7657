import type { Notion } from '../../core/notions/notion.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import type { Kept } from '../schema.ts'
import { putRecord, readAll, removeRecord } from './collection.ts'

/** All notions owned, the last kept first. */
export function readNotions(store: Store<unknown>): Promise<Reading<Kept<Notion>>> {
  return readAll(store, 'notions')
}

/** Stores a notion, over the one of the same id if there is one. */
export function putNotion(store: Store<unknown>, notion: Notion): Promise<void> {
  return putRecord(store, 'notions', notion)
}

/** Deletes the notion; nothing happens if there is none of that id. */
export function removeNotion(store: Store<unknown>, id: string): Promise<void> {
  return removeRecord(store, 'notions', id)
}
