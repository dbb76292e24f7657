import { computed } from '@preact/signals'
import { clothOf } from '../../core/stash/cloth-of.ts'
import type { Reservation } from '../../core/stash/reservation.ts'
import { type ReservationFault, reservationFaults } from '../../core/stash/reservation-faults.ts'
import { clothRecords } from './cloth-state.ts'
import { garments } from './stash-state.ts'

/**
 * Reservations that hold no longer because their garment was measured anew or marked with more flaws, by id: they are
 * named wherever they are shown, and never given up without her.
 */
const broken = computed(() => {
  const records = clothRecords.value
  const faults = new Map<string, readonly ReservationFault[]>()
  for (const garment of garments.value) {
    const here = records.reservations.filter((reservation) => reservation.garment === garment.id)
    if (here.length === 0) continue
    const cloth = clothOf(garment, records)
    for (const reservation of here) faults.set(reservation.id, reservationFaults(reservation, cloth))
  }
  return faults
})

/** What does not hold of a reservation; empty for a sound one. */
export function brokenIn({ id }: Reservation): readonly ReservationFault[] {
  return broken.value.get(id) ?? []
}
