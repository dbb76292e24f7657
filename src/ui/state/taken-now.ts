import { computed } from '@preact/signals'
import type { Garment } from '../../core/garments/garment.ts'
import { type ClothRecords, NO_RECORDS, recordsByGarment } from '../../core/stash/taken.ts'
import { clothRecords } from './cloth-state.ts'

const byGarment = computed(() => recordsByGarment(clothRecords.value))

/** What is reserved, cut and left over of the garment. Reads a signal, so it follows. */
export function recordsOf({ id }: Pick<Garment, 'id'>): ClothRecords {
  return byGarment.value.get(id) ?? NO_RECORDS
}

export function isReserved(garment: Pick<Garment, 'id'>): boolean {
  return recordsOf(garment).reservations.length > 0
}
