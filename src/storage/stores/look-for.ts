import { ok, type Result } from '../../core/base/result.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import type { Gate } from '../reading.ts'
import { LOOK_FOR } from '../schema.ts'
import { transact } from '../transact.ts'

/** What to look for, as it was worked out last; null when nothing ever was, or why it cannot be read. */
export async function readLookFor<T>({ database }: Store<unknown>, gate: Gate<T>): Promise<Result<T | null>> {
  const raw: unknown = await orStorageError(database.get('drafts', LOOK_FOR))
  return raw === undefined ? ok(null) : gate(raw)
}

/** Calls take effect in their order. */
export function writeLookFor(store: Store<unknown>, value: unknown): Promise<void> {
  return transact(store, ['drafts'], (transaction) => transaction.objectStore('drafts').put(value, LOOK_FOR))
}
