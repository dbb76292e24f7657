import * as z from 'zod/mini'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { UNFINISHED } from '../schema.ts'
import { transact } from '../transact.ts'

const gate = z.catch(z.record(z.string(), z.string()), {})

/** Text that stands in fields and is no part of a record yet, by the field's key. */
export type Unfinished = Readonly<Record<string, string>>

/** Never refuses: what cannot be read is nothing. */
export async function readUnfinished({ database }: Store<unknown>): Promise<Unfinished> {
  return gate.parse(await orStorageError(database.get('drafts', UNFINISHED)))
}

export function writeUnfinished(store: Store<unknown>, texts: Unfinished): Promise<void> {
  return transact(store, ['drafts'], (transaction) =>
    transaction.objectStore('drafts').put(texts, UNFINISHED),
  )
}
