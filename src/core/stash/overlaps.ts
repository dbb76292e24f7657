import type { Mm } from '../base/units.ts'
import type { Polygon } from '../geometry/types.ts'
import { TOLERANCE } from '../packing/check/check-packing.ts'
import { type Outline, outlineOf } from '../packing/check/outline.ts'
import { liesWithin, overlapDeeply } from '../packing/check/touch.ts'
import type { Reservation } from './reservation.ts'
import { placesOf, type ReservedPlace } from './taken.ts'

/** As deep as a checked lay may err, and the rounding of outlines beyond it. */
export const HELD_WITHIN: Mm = TOLERANCE + 0.005

/** True if the two outlines share ground, deeper than a checked lay may err. By the code that checks lays: the search has no part in it. */
export function outlinesOverlap(a: Polygon, b: Polygon): boolean {
  return overlapDeeply(outlineOf(a), outlineOf(b), HELD_WITHIN)
}

/** True if `inner` lies in `outer`, to within what a checked lay may err. */
export function outlineWithin(inner: Polygon, outer: Polygon): boolean {
  return liesWithin(outlineOf(inner), outlineOf(outer), HELD_WITHIN)
}

export interface Overlap {
  readonly first: ReservedPlace
  readonly second: ReservedPlace
}

/** Every two places of these reservations, on one panel of one garment, that share ground. */
export function overlapsOf(reservations: readonly Reservation[]): readonly Overlap[] {
  return [...eachOverlap(reservations)]
}

/** The same one by one, for whoever need not know them all. `second` is of the later reservation, or the later piece. */
export function* eachOverlap(reservations: Iterable<Reservation>): Generator<Overlap> {
  const panels = new Map<string, { place: ReservedPlace; outline: Outline }[]>()
  for (const reservation of reservations) {
    for (const place of placesOf(reservation)) {
      const key = JSON.stringify([reservation.garment, place.panel])
      const there = panels.get(key) ?? []
      const outline = outlineOf(place.outline)
      for (const other of there)
        if (overlapDeeply(outline, other.outline, HELD_WITHIN)) yield { first: other.place, second: place }
      there.push({ place, outline })
      panels.set(key, there)
    }
  }
}
