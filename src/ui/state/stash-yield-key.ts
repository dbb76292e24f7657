import type { Garment } from '../../core/garments/garment.ts'
import { type ClothRecords, takenOf } from '../../core/stash/taken.ts'

interface Known {
  readonly records: ClothRecords
  readonly key: string
}

const keys = new WeakMap<Garment, Known>()

/**
 * The same text for the same cloth with the same places taken of it. What she calls it and where it lies does not count:
 * what is known of its cloth stays known.
 *
 * @param records The garment's own, as `recordsOf` gives them, or those of all.
 */
export function garmentKey(garment: Garment, records: ClothRecords): string {
  const known = keys.get(garment)
  if (known?.records === records) return known.key
  const {
    name: _,
    note: _note,
    place: _place,
    price: _price,
    photos: _photos,
    boughtOn: _day,
    ...cloth
  } = garment
  const key = JSON.stringify([cloth, takenOf(garment.id, records)])
  keys.set(garment, { records, key })
  return key
}
