import type { Reservation } from '../../core/stash/reservation.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import { writeRecords } from '../record-writing.ts'
import type { Removal } from '../removal.ts'
import type { Kept } from '../schema.ts'
import { readAll } from './collection.ts'

/** All reservations, the last kept first. Reserving is in ../cloth/reserve.ts. */
export function readReservations(store: Store<unknown>): Promise<Reading<Kept<Reservation>>> {
  return readAll(store, 'reservations')
}

/** Gives the cloth free again. Gives what was removed, for `restore`; nothing if there is no such reservation. */
export function releaseReservation(store: Store<unknown>, id: string): Promise<Removal> {
  return writeRecords(store, ['reservations'], async (writing) => {
    const before = await writing.remove('reservations', id)
    return { records: before ? [{ store: 'reservations', kept: before }] : [], pictures: [] }
  })
}
