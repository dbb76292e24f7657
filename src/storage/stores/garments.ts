import type { Garment } from '../../core/garments/garment.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'
import { type Removal, Removing } from '../removal.ts'
import { CHECK_DRAFT, type Kept } from '../schema.ts'
import { putRecord, readAll } from './collection.ts'

/** All garments, the last kept first. */
export function readGarments(store: Store<unknown>): Promise<Reading<Kept<Garment>>> {
  return readAll(store, 'garments')
}

/** Stores a garment, over the one of the same id if there is one. */
export function putGarment(store: Store<unknown>, garment: Garment): Promise<void> {
  return putRecord(store, 'garments', garment)
}

/** Stores the garment just checked and clears the draft, both or neither. */
export function keepGarment(store: Store<unknown>, garment: Garment): Promise<void> {
  return writeRecords(store, ['garments', 'drafts'], async (writing) => {
    await writing.put('garments', garment)
    await writing.transaction.objectStore('drafts').delete(CHECK_DRAFT)
  })
}

/** What a garment's removal may touch. */
export const GARMENT_STORES = ['garments', 'reservations', 'cuts', 'offcuts', 'photos', 'pictures'] as const

/**
 * Removes the garment with all that hangs on it: reservations, cuts, offcuts, photos. Gives what was removed, for
 * `restore`; nothing if there is none of that id.
 */
export function removeGarment(store: Store<unknown>, id: string): Promise<Removal> {
  return writeRecords(store, GARMENT_STORES, async (writing) => {
    const removing = new Removing(writing)
    await removeGarmentIn(writing, removing, id)
    return removing.removal()
  })
}

/** The same, as a part of a removal of more. The transaction has `GARMENT_STORES`. */
export async function removeGarmentIn(writing: RecordWriting, removing: Removing, id: string): Promise<void> {
  const garment = await writing.get('garments', id)
  await removing.remove('garments', id)
  for (const name of ['reservations', 'cuts', 'offcuts'] as const)
    await removing.removeAll(name, await writing.keptOfGarment(name, id))
  for (const photo of garment?.photos ?? []) await removing.removePhoto(photo)
}
