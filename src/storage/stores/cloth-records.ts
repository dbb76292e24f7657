import type { ClothRecords } from '../../core/stash/taken.ts'
import { orStorageError } from '../errors.ts'
import { inSlices } from '../in-slices.ts'
import type { Store } from '../open-store.ts'
import type { Unreadable } from '../reading.ts'
import type { Kept, RecordStore, Records } from '../schema.ts'

export interface ClothReading {
  readonly records: ClothRecords
  readonly unreadable: readonly Unreadable[]
}

/** All reservations, cuts and offcuts as they are at one moment, those that fail their gate apart. */
export async function readClothRecords(store: Store<unknown>): Promise<ClothReading> {
  const transaction = store.database.transaction(['cuts', 'offcuts', 'reservations'])
  const stored = Promise.all([
    transaction.objectStore('cuts').getAll(),
    transaction.objectStore('offcuts').getAll(),
    transaction.objectStore('reservations').getAll(),
  ])
  const [cuts, offcuts, reservations] = await orStorageError(stored)
  const unreadable: Unreadable[] = []
  return {
    records: {
      cuts: await readable(store, 'cuts', cuts, unreadable),
      offcuts: await readable(store, 'offcuts', offcuts, unreadable),
      reservations: await readable(store, 'reservations', reservations, unreadable),
    },
    unreadable,
  }
}

async function readable<Name extends RecordStore>(
  { gates }: Store<unknown>,
  name: Name,
  stored: readonly Kept<Records[Name]>[],
  unreadable: Unreadable[],
): Promise<readonly Records[Name][]> {
  const through = await inSlices(stored, ({ id, value }) => ({ id, read: gates[name](value) }))
  return through.flatMap(({ id, read }) => {
    if (read.ok) return [read.value as Records[Name]]
    unreadable.push({ store: name, id, faults: read.faults })
    return []
  })
}
