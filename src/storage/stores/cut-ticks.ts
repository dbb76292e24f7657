import * as z from 'zod/mini'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { CUT_TICKS } from '../schema.ts'
import { transact } from '../transact.ts'

const gate = z.catch(z.array(z.string()), [])

/** Keys of the copies ticked at the table and not yet noted as cut. */
export async function readCutTicks({ database }: Store<unknown>): Promise<readonly string[]> {
  return gate.parse(await orStorageError(database.get('drafts', CUT_TICKS)))
}

export function writeCutTicks(store: Store<unknown>, ticks: readonly string[]): Promise<void> {
  return transact(store, ['drafts'], (transaction) => transaction.objectStore('drafts').put(ticks, CUT_TICKS))
}
