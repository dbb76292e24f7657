import type { Reservation } from '../../core/stash/reservation.ts'
import type { Store } from '../open-store.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'
import type { Removal } from '../removal.ts'
import { RECORD_STORES } from '../schema.ts'
import { StashRefusal } from './refusals.ts'
import { checkPlaces } from './reserve.ts'

/**
 * Takes a removal back in one transaction. A reservation whose cloth was promised to another meanwhile cannot come back;
 * those are given, everything else is there again.
 */
export function restore(store: Store<unknown>, removal: Removal): Promise<readonly Reservation[]> {
  return writeRecords(store, [...RECORD_STORES, 'pictures'], async (writing) => {
    for (const { store: name, kept } of removal.records)
      if (name !== 'reservations') await writing.putBack(name, kept)
    for (const picture of removal.pictures) await writing.transaction.objectStore('pictures').put(picture)
    const lost: Reservation[] = []
    for (const { store: name, kept } of removal.records) {
      if (name !== 'reservations') continue
      const reservation = kept.value as Reservation
      if (await isFree(writing, reservation)) await writing.putBack(name, kept)
      else lost.push(reservation)
    }
    return lost
  })
}

async function isFree(writing: RecordWriting, reservation: Reservation): Promise<boolean> {
  try {
    await checkPlaces(writing, reservation)
    return true
  } catch (error) {
    if (error instanceof StashRefusal) return false
    throw error
  }
}
