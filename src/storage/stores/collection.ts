import { orStorageError } from '../errors.ts'
import { inSlices } from '../in-slices.ts'
import type { Store } from '../open-store.ts'
import type { Reading, Unreadable } from '../reading.ts'
import { writeRecords } from '../record-writing.ts'
import type { Kept, RecordStore, Records } from '../schema.ts'

/** What the stores of many records share: they differ in nothing but their value. */

/** All records, the last kept first; those that fail the gate are told apart. */
export async function readAll<Name extends RecordStore>(
  { database, gates }: Store<unknown>,
  name: Name,
): Promise<Reading<Kept<Records[Name]>>> {
  const records: Kept<Records[Name]>[] = []
  const unreadable: Unreadable[] = []
  const all = await orStorageError(database.getAll(name))
  const through = await inSlices(all, (stored) => ({ stored, read: gates[name](stored.value) }))
  for (const { stored, read } of through) {
    if (read.ok) records.push({ ...stored, value: read.value as Records[Name] })
    else unreadable.push({ store: name, id: stored.id, faults: read.faults })
  }
  records.sort((a, b) => b.keptAt - a.keptAt)
  return { records, unreadable }
}

/** Stores a record, over the one of the same id if there is one. */
export function putRecord<Name extends RecordStore>(
  store: Store<unknown>,
  name: Name,
  value: Records[Name],
): Promise<void> {
  return writeRecords(store, [name], (writing) => writing.put(name, value))
}

/** Removes a record that nothing hangs on; nothing happens if there is none of that id. */
export function removeRecord(store: Store<unknown>, name: RecordStore, id: string): Promise<void> {
  return writeRecords(store, [name], async (writing) => {
    await writing.remove(name, id)
  })
}
