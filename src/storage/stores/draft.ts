import { ok, type Result } from '../../core/base/result.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { CHECK_DRAFT } from '../schema.ts'
import { transact } from '../transact.ts'

/** The check under way, null when there is none, or why it cannot be read. */
export async function readDraft<Draft>({ database, gates }: Store<Draft>): Promise<Result<Draft | null>> {
  const raw: unknown = await orStorageError(database.get('drafts', CHECK_DRAFT))
  return raw === undefined ? ok(null) : gates.draft(raw)
}

/** Stores the check under way. Called at every change; calls take effect in their order. */
export function writeDraft<Draft>(store: Store<Draft>, draft: Draft): Promise<void> {
  return transact(store, ['drafts'], (transaction) =>
    transaction.objectStore('drafts').put(draft, CHECK_DRAFT),
  )
}

export function clearDraft(store: Store<unknown>): Promise<void> {
  return transact(store, ['drafts'], (transaction) => transaction.objectStore('drafts').delete(CHECK_DRAFT))
}
