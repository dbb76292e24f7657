import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import type { Gate, Reading, Unreadable } from '../reading.ts'
import type { Kept } from '../schema.ts'

/** What the stores of many records share: they differ in nothing but their value. */

/** All records, the last kept first; those that fail the gate are told apart. */
export async function readAll<T>(
  { database }: Store<unknown>,
  name: 'garments' | 'patterns' | 'notions',
  gate: Gate<T>,
): Promise<Reading<Kept<T>>> {
  const records: Kept<T>[] = []
  const unreadable: Unreadable[] = []
  for (const stored of await orStorageError(database.getAll(name))) {
    const read = gate(stored.value)
    if (read.ok) records.push({ ...stored, value: read.value })
    else unreadable.push({ store: name, id: stored.id, faults: read.faults })
  }
  records.sort((a, b) => b.keptAt - a.keptAt)
  return { records, unreadable }
}

/** The part of an object store that `putInto` needs. */
interface Shelf<T> {
  get(id: string): Promise<Kept<T> | undefined>
  put(record: Kept<T>): Promise<unknown>
}

/** Writes the value over the one of the same id, whose time of keeping it takes over. */
export async function putInto<T extends { readonly id: string }>(
  shelf: Shelf<T>,
  value: T,
  now: number,
): Promise<void> {
  const before = await shelf.get(value.id)
  await shelf.put({ id: value.id, value, keptAt: before?.keptAt ?? now, changedAt: now })
}
