import type { Garment } from '../../core/garments/garment.ts'
import { clothOf, type GarmentCloth } from '../../core/stash/cloth-of.ts'
import { freeArea, hasClearRectangle } from '../../core/stash/free-cloth.ts'
import type { ClothFacts } from '../../core/stash/stash-filter.ts'
import type { ClothRecords } from '../../core/stash/taken.ts'
import { clothRecords } from './cloth-state.ts'

interface Known {
  readonly records: ClothRecords
  readonly cloth: GarmentCloth
  area: number | null
}

/** Both garments and records are replaced when they change, so that what is known of them can be kept as long as they are. */
const known = new WeakMap<Garment, Known>()

function knownOf(garment: Garment): Known {
  const records = clothRecords.value
  let now = known.get(garment)
  if (!now || now.records !== records) {
    now = { records, cloth: clothOf(garment, records), area: null }
    known.set(garment, now)
  }
  return now
}

/** The garment's cloth as it is now. Reads a signal, so it follows what is reserved and cut. */
export function clothNow(garment: Garment): GarmentCloth {
  return knownOf(garment).cloth
}

/** mm² that are free. */
export function freeAreaNow(garment: Garment): number {
  const now = knownOf(garment)
  now.area ??= freeArea(now.cloth)
  return now.area
}

/** What a filter asks of the garment's cloth. */
export function clothFacts(garment: Garment): ClothFacts {
  return {
    isReserved: clothRecords.value.reservations.some((reservation) => reservation.garment === garment.id),
    freeArea: () => freeAreaNow(garment),
    hasClear: (width, height) => hasClearRectangle(clothNow(garment), width, height),
  }
}
