import type { Mm } from '../base/units.ts'
import { ringsArea, ringsIntersection } from '../geometry/clipper.ts'
import { polygonCounterClockwise } from '../geometry/index.ts'
import type { Polygon } from '../geometry/types.ts'
import type { FreePanel } from './cloth-of.ts'
import { groundOf } from './ground.ts'
import { offcutsOf, type Remainder } from './offcuts-of.ts'
import { outlineWithin } from './overlaps.ts'
import type { LaidPiece, Reservation } from './reservation.ts'

export interface CutRequest {
  readonly panel: FreePanel
  readonly pieces: readonly LaidPiece[]
  /** All reservations of the garment, that of the pieces among them. */
  readonly reservations: readonly Reservation[]
  readonly sliver: Mm
}

export interface CutApart extends Remainder {
  /** Of the panel as it was cut, its hems left on if pieces took them over. */
  readonly outline: Polygon
  readonly flaws: readonly Polygon[]
  /**
   * The reservations that change, once the offcuts have these ids, in their order: the pieces cut leave, the others on the
   * panel move to the offcut with most of them. One that no offcut has anything of stays where the panel was, and is
   * told as a fault.
   */
  moved(offcutIds: readonly string[]): readonly Reservation[]
}

/** What becomes of a panel, and of what is reserved on it, when these pieces are cut from it. */
export function cutApart({ panel, pieces, reservations, sliver }: CutRequest): CutApart {
  const isCut = (laid: LaidPiece) => pieces.includes(laid)
  const others = reservations.flatMap((one) =>
    one.pieces.filter((laid) => laid.panel === panel.id && !isCut(laid)),
  )
  const outline = outlineFor(panel, pieces)
  const remainder = offcutsOf({
    outline: panel.outline,
    flaws: panel.flaws,
    pieces: pieces.flatMap((laid) => groundOf(laid.outline, panel.hemmed)),
    reserved: others.map((laid) => laid.outline),
    sliver,
  })
  return {
    ...remainder,
    outline,
    flaws: panel.flaws,
    moved: (ids) =>
      reservations
        .map((one) => ({
          ...one,
          pieces: one.pieces.flatMap((laid) => {
            if (laid.panel !== panel.id) return [laid]
            return isCut(laid) ? [] : [{ ...laid, panel: homeAmong(remainder, ids, laid) }]
          }),
        }))
        .filter(
          (one, i) =>
            one.pieces.some((laid, k) => laid !== reservations[i]?.pieces[k]) ||
            one.pieces.length !== reservations[i]?.pieces.length,
        ),
  }
}

/** Pieces that took a hem over lie on the panel with its hems left on. */
function outlineFor({ outline, hemmed }: FreePanel, pieces: readonly LaidPiece[]): Polygon {
  if (!hemmed || pieces.every((laid) => outlineWithin(laid.outline, outline))) return outline
  return hemmed.outline
}

function homeAmong({ offcuts }: Remainder, ids: readonly string[], laid: LaidPiece): string {
  const place = [polygonCounterClockwise(laid.outline)]
  const shared = offcuts.map(({ outline }) =>
    ringsArea(ringsIntersection([polygonCounterClockwise(outline)], place)),
  )
  const most = Math.max(0, ...shared)
  return (most > 0 && ids[shared.indexOf(most)]) || laid.panel
}
