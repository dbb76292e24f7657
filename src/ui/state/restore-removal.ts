import { signal } from '@preact/signals'
import type { Reservation } from '../../core/stash/reservation.ts'
import type { Removal } from '../../storage/removal.ts'
import { storeTrouble, theStore } from './keeper.ts'

/** Reservations that could not come back with what was taken back last: their cloth is another's by now. */
export const notRestored = signal<readonly Reservation[]>([])

/** Takes a removal back, in one stroke. What the device refuses stands in `storeTrouble`. */
export async function restoreRemoval(removal: Removal): Promise<void> {
  try {
    const { restore } = await import('./cloth-writes.ts')
    notRestored.value = await restore(await theStore(), removal)
  } catch (error) {
    storeTrouble.value = error
  }
}
