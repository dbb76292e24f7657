import {
  type Contents,
  type Kept,
  RECORD_STORES,
  type RecordStore,
  type Records,
  type UnreadRecord,
} from '../../core/records/record.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { ALL_SETTINGS, type Removed } from '../schema.ts'
import { ALL_STORES, type Everything, readable } from './everything.ts'

/** Everything that is stored, as of one moment. */
export function readEverything(store: Store<unknown>): Promise<Everything> {
  return orStorageError(read(store))
}

async function read({ database, gates }: Store<unknown>): Promise<Everything> {
  const transaction = database.transaction([...ALL_STORES])
  const [contents, pictures, settings, keys, values] = await Promise.all([
    readContents((name) => transaction.objectStore(name).getAll(), gates),
    transaction.objectStore('pictures').getAll(),
    transaction.objectStore('settings').get(ALL_SETTINGS),
    transaction.objectStore('drafts').getAllKeys(),
    transaction.objectStore('drafts').getAll(),
  ])
  await transaction.done
  return {
    contents,
    pictures,
    ...(settings === undefined ? {} : { settings }),
    drafts: Object.fromEntries(keys.map((key, k) => [key, values[k]])),
  }
}

/** All records of a transaction; those that fail their gate are carried as they lie there. */
export async function readContents(
  getAll: (name: RecordStore | 'removed') => Promise<readonly unknown[]>,
  gates: Store<unknown>['gates'],
): Promise<Contents> {
  const all = await Promise.all(RECORD_STORES.map((name) => getAll(name)))
  const removed = (await getAll('removed')) as readonly Removed[]
  const unread: UnreadRecord[] = []
  const records = RECORD_STORES.map((store, k) => {
    const kept: Kept<Records[RecordStore]>[] = []
    for (const record of all[k] ?? []) {
      const read = readable<Records[RecordStore]>(record, gates[store])
      if (read) kept.push(read)
      else unread.push({ store, id: (record as { readonly id: string }).id, record })
    }
    return [store, kept] as const
  })
  const there = new Set([...records.flatMap(([store, kept]) => kept.map(({ id }) => `${store}/${id}`))])
  for (const { store, id } of unread) there.add(`${store}/${id}`)
  return {
    records: Object.fromEntries(records) as unknown as Contents['records'],
    // What is there again was put back after it had been removed.
    removed: removed.filter(({ store, id }) => !there.has(`${store}/${id}`)),
    unread,
  }
}
