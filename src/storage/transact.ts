import type { IDBPTransaction } from 'idb'
import { orStorageError } from './errors.ts'
import type { Store } from './open-store.ts'
import type { Schema, StoreName } from './schema.ts'

export type Transaction<Names extends StoreName> = IDBPTransaction<Schema, Names[], 'readwrite'>

/**
 * Does all of `work` or nothing of it. Resolves once it is on the disk, and only then tells the other tabs.
 * `work` may await requests of the transaction and nothing else, or the transaction ends under it.
 */
export async function transact<Names extends StoreName>(
  store: Store<unknown>,
  names: Names[],
  work: (transaction: Transaction<Names>) => Promise<unknown>,
): Promise<void> {
  await orStorageError(allOrNothing(store, names, work))
  store.changes.announce(names)
}

async function allOrNothing<Names extends StoreName>(
  { database }: Store<unknown>,
  names: Names[],
  work: (transaction: Transaction<Names>) => Promise<unknown>,
): Promise<void> {
  // Strict: she may put the phone away, or it may die, the moment after.
  const transaction = database.transaction(names, 'readwrite', { durability: 'strict' })
  // Awaited below; marked as handled, because `work` may fail first.
  transaction.done.catch(() => {})
  try {
    await work(transaction)
  } catch (error) {
    abort(transaction)
    // A request that fails because its transaction was ended says just that; the transaction knows why.
    throw transaction.error ?? error
  }
  await transaction.done
}

function abort(transaction: { abort(): void }): void {
  try {
    transaction.abort()
  } catch {
    // It has ended already, by the error that brought us here.
  }
}
