import { type IDBPDatabase, openDB } from 'idb'
import type { RecordStore, Records } from '../core/records/record.ts'
import { type ChangeListener, type Changes, openChanges } from './changes.ts'
import { orStorageError } from './errors.ts'
import type { Gate } from './reading.ts'
import type { Schema } from './schema.ts'
import { UPGRADES } from './upgrades/all.ts'
import type { Upgrade } from './upgrades/upgrade.ts'

/** Validators of what is read back, one a store of records. Passed in: storage knows no reader, and the draft is the screen's. */
export type Gates<Draft> = { readonly [Name in RecordStore]: Gate<Records[Name]> } & {
  readonly draft: Gate<Draft>
}

export interface StoreOptions<Draft> {
  readonly gates: Gates<Draft>
  /** Another name is another, separate store: for tests. */
  readonly name?: string
  /** ms since 1970. */
  readonly now?: () => number
  /** A tab with an older version of the app must be closed before this one can go on; called at most once. */
  readonly onBlocked?: () => void
  /** This store can be used no longer (another tab has a newer app, or the browser ended it): reload. */
  readonly onLost?: () => void
  readonly upgrades?: readonly Upgrade[]
}

/** An open store; the functions in stores/ take it as their first argument. */
export interface Store<Draft> {
  readonly database: IDBPDatabase<Schema>
  readonly gates: Gates<Draft>
  readonly changes: Changes
  now(): number
}

/** Opens the store, bringing it up to date first. Rejects with a `StorageError` when the device refuses. */
export async function openStore<Draft>(options: StoreOptions<Draft>): Promise<Store<Draft>> {
  const { gates, name = 'cutworth', now = Date.now, onBlocked, onLost, upgrades = UPGRADES } = options
  const database = await orStorageError(openDatabase(name, upgrades, onBlocked, onLost))
  return { database, gates, now, changes: openChanges(name) }
}

async function openDatabase(
  name: string,
  upgrades: readonly Upgrade[],
  onBlocked?: () => void,
  onLost?: () => void,
): Promise<IDBPDatabase<Schema>> {
  let failure: unknown
  const opened = openDB<Schema>(name, upgrades.length, {
    async upgrade(database, from, _to, transaction) {
      transaction.done.catch(() => {})
      try {
        for (const upgrade of upgrades.slice(from)) await upgrade(database as never, transaction as never)
      } catch (error) {
        failure = error
        // Else the browser would keep the half that was done.
        transaction.abort()
      }
    },
    blocked: () => onBlocked?.(),
    blocking(_from, _to, event) {
      // Another tab cannot update while we hold on; what was written is safe, as every write is awaited.
      ;(event.target as IDBDatabase).close()
      onLost?.()
    },
    terminated: () => onLost?.(),
  })
  return opened.catch((error) => {
    throw failure ?? error
  })
}

export function closeStore(store: Store<unknown>): void {
  store.changes.close()
  store.database.close()
}

/** Calls back after each change, made in this tab or another, with the stores it touched. Returns how to stop. */
export function onStoreChange(store: Store<unknown>, listener: ChangeListener): () => void {
  return store.changes.listen(listener)
}
