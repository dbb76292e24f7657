import type { Notion } from '../../core/notions/notion.ts'
import type { Store } from '../open-store.ts'
import type { Gate, Reading } from '../reading.ts'
import type { Kept } from '../schema.ts'
import { transact } from '../transact.ts'
import { putInto, readAll } from './collection.ts'

/** All notions, the last kept first. */
export function readNotions(store: Store<unknown>, gate: Gate<Notion>): Promise<Reading<Kept<Notion>>> {
  return readAll(store, 'notions', gate)
}

/** Stores a notion, over the one of the same id if there is one. */
export function putNotion(store: Store<unknown>, notion: Notion): Promise<void> {
  return transact(store, ['notions', 'removed'], async (transaction) => {
    await putInto(transaction.objectStore('notions'), notion, store.now())
    // It is there again, if it ever was removed.
    await transaction.objectStore('removed').delete(['notions', notion.id])
  })
}

/** Deletes the notion, and notes that it is gone; nothing happens if there is none of that id. */
export function removeNotion(store: Store<unknown>, id: string): Promise<void> {
  return transact(store, ['notions', 'removed'], async (transaction) => {
    const notions = transaction.objectStore('notions')
    if ((await notions.getKey(id)) === undefined) return
    await notions.delete(id)
    await transaction.objectStore('removed').put({ store: 'notions', id, removedAt: store.now() })
  })
}
