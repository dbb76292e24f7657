import type { FreePanel, GarmentCloth } from './cloth-of.ts'
import { groundOf } from './ground.ts'
import { outlinesOverlap, outlineWithin } from './overlaps.ts'
import type { LaidPiece, Reservation } from './reservation.ts'
import type { ReservedPlace } from './taken.ts'

/** Why a reserved piece has no longer the place that was promised to it. */
export type ReservationFault = Pick<LaidPiece, 'piece' | 'copy' | 'panel'> &
  (
    | {
        /** The panel was cut, thrown away, or is no part of the garment as now described; it sticks out of it; it lies on a flaw. */
        readonly kind: 'panel-gone' | 'outside' | 'flaw'
      }
    /** Another reservation has the place, or another piece of this one. */
    | { readonly kind: 'taken'; readonly by: ReservedPlace }
  )

/**
 * What does not hold of the reservation on the cloth as it is now; empty for a sound one. Whether the reservation is
 * itself among those of `cloth` makes no difference. One fault a piece, the first of the list above.
 */
export function reservationFaults(
  reservation: Reservation,
  cloth: GarmentCloth,
): readonly ReservationFault[] {
  const panels = new Map(cloth.panels.map((panel) => [panel.id, panel]))
  return reservation.pieces.flatMap((laid, i): readonly ReservationFault[] => {
    const { piece, copy, panel: id } = laid
    const panel = panels.get(id)
    const before = reservation.pieces.slice(0, i)
    const fault = panel ? faultOn(panel, laid, reservation, before) : ({ kind: 'panel-gone' } as const)
    return fault ? [{ piece, copy, panel: id, ...fault }] : []
  })
}

type PlaceFault =
  | { readonly kind: 'outside' | 'flaw' }
  | { readonly kind: 'taken'; readonly by: ReservedPlace }

function faultOn(
  panel: FreePanel,
  laid: LaidPiece,
  reservation: Reservation,
  before: readonly LaidPiece[],
): PlaceFault | null {
  const { outline } = laid
  if (!isOn(panel, laid)) return { kind: 'outside' }
  if (panel.flaws.some((flaw) => outlinesOverlap(outline, flaw))) return { kind: 'flaw' }
  const ground = groundOf(outline, panel.hemmed)
  const others = panel.reserved.filter((place) => place.reservation !== reservation.id)
  const by = others.find((place) =>
    groundOf(place.outline, panel.hemmed).some((part) =>
      ground.some((other) => outlinesOverlap(part, other)),
    ),
  )
  if (by) return { kind: 'taken', by }
  const own = before.find((other) => other.panel === panel.id && outlinesOverlap(other.outline, outline))
  if (!own) return null
  const { piece, copy } = own
  return {
    kind: 'taken',
    by: {
      reservation: reservation.id,
      project: reservation.project,
      piece,
      copy,
      panel: panel.id,
      outline: own.outline,
    },
  }
}

/** On the panel as it opens, or as it is with its hems left on. */
function isOn({ outline, hemmed }: FreePanel, laid: LaidPiece): boolean {
  if (outlineWithin(laid.outline, outline)) return true
  return hemmed !== null && outlineWithin(laid.outline, hemmed.outline)
}
