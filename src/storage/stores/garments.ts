import type { Garment } from '../../core/garments/garment.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import { CHECK_DRAFT, type Kept } from '../schema.ts'
import { transact } from '../transact.ts'
import { putInto, readAll } from './collection.ts'

/** All garments, the last kept first. */
export function readGarments(store: Store<unknown>): Promise<Reading<Kept<Garment>>> {
  return readAll(store, 'garments', store.gates.garment)
}

/** Stores a garment, over the one of the same id if there is one. */
export function putGarment(store: Store<unknown>, garment: Garment): Promise<void> {
  return transact(store, ['garments'], (transaction) =>
    putInto(transaction.objectStore('garments'), garment, store.now()),
  )
}

/** Stores the garment just checked and clears the draft, both or neither. */
export function keepGarment(store: Store<unknown>, garment: Garment): Promise<void> {
  return transact(store, ['garments', 'drafts'], async (transaction) => {
    await putInto(transaction.objectStore('garments'), garment, store.now())
    await transaction.objectStore('drafts').delete(CHECK_DRAFT)
  })
}

/** Deletes the garment; nothing happens if there is none of that id. */
export function removeGarment(store: Store<unknown>, id: string): Promise<void> {
  return transact(store, ['garments'], (transaction) => transaction.objectStore('garments').delete(id))
}
