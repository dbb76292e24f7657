import { type Merge, mergeContents } from '../../core/records/merge.ts'
import { type Contents, RECORD_STORES, refKey } from '../../core/records/record.ts'
import { commonAfter } from '../../core/records/stamps.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { type Device, type StoreName, THIS_DEVICE } from '../schema.ts'
import { transact } from '../transact.ts'
import { newDevice } from './device.ts'
import type { FromFile } from './everything.ts'
import { readContents } from './read-everything.ts'

const STORES = [...RECORD_STORES, 'removed', 'pictures', 'device'] as const satisfies StoreName[]

/** A merge, and what it starts from: to tell its records by their names. */
export interface MergePreview extends Merge {
  readonly before: Contents
}

/** What merging the file would do; nothing is written. */
export async function previewMerge(store: Store<unknown>, file: FromFile): Promise<MergePreview> {
  const transaction = store.database.transaction([...STORES])
  const reading = Promise.all([
    readContents((name) => transaction.objectStore(name).getAll(), store.gates),
    transaction.objectStore('device').get(THIS_DEVICE),
  ])
  const [before, device] = await orStorageError(reading)
  return { ...mergeWith(before, device, file), before }
}

/** Merges the file into what is stored as it is now, all of it or nothing. */
export async function mergeIn(store: Store<unknown>, file: FromFile, makeId: () => string): Promise<void> {
  await transact(store, [...STORES], async (transaction) => {
    const device = (await transaction.objectStore('device').get(THIS_DEVICE)) ?? newDevice(makeId)
    const before = await readContents((name) => transaction.objectStore(name).getAll(), store.gates)
    const { puts, deletes } = stepsBetween(before, mergeWith(before, device, file).contents)
    const pictures = new Map(file.pictures.map((picture) => [picture.id, picture]))
    for (const { store: name, id } of deletes) {
      await transaction.objectStore(name).delete(id as never)
      if (name === 'photos') await transaction.objectStore('pictures').delete(id as string)
    }
    for (const { store: name, record } of puts) {
      await transaction.objectStore(name).put(record as never)
      const picture = name === 'photos' && pictures.get((record as { readonly id: string }).id)
      if (picture) await transaction.objectStore('pictures').put(picture)
    }
    const common = commonAfter(device.common, file)
    await transaction.objectStore('device').put({ ...device, common }, THIS_DEVICE)
  })
}

function mergeWith(before: Contents, device: Device | undefined, file: FromFile): Merge {
  const here = { device: device?.id ?? '', contents: before, common: device?.common ?? [] }
  return mergeContents(here, file)
}

interface Steps {
  readonly puts: readonly { readonly store: Shelf; readonly record: unknown }[]
  readonly deletes: readonly { readonly store: Shelf; readonly id: unknown }[]
}
type Shelf = (typeof RECORD_STORES)[number] | 'removed'

/** What to write: a record that stays is the very object that was read. */
function stepsBetween(before: Contents, after: Contents): Steps {
  const was = rowsOf(before)
  const is = rowsOf(after)
  return {
    deletes: [...was].flatMap(([key, { store, id }]) => (is.has(key) ? [] : [{ store, id }])),
    puts: [...is].flatMap(([key, { store, record, text }]) =>
      was.get(key)?.record === record || (text !== undefined && was.get(key)?.text === text)
        ? []
        : [{ store, record }],
    ),
  }
}

interface Row {
  readonly store: Shelf
  readonly id: unknown
  readonly record: unknown
  /** Of what is made anew at every merge, to know it again. */
  readonly text?: string
}

function rowsOf({ records, removed, unread }: Contents): Map<string, Row> {
  const rows = new Map<string, Row>()
  for (const store of RECORD_STORES)
    for (const record of records[store])
      rows.set(refKey({ store, id: record.id }), { store, id: record.id, record })
  for (const { store, id, record } of unread) rows.set(refKey({ store, id }), { store, id, record })
  for (const record of removed) {
    const id = [record.store, record.id]
    rows.set(`removed/${refKey(record)}`, { store: 'removed', id, record, text: `${record.removedAt}` })
  }
  return rows
}
