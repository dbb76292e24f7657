import type { Mm } from '../base/units.ts'
import { ringsArea, ringsIntersection } from '../geometry/clipper.ts'
import { polygonCounterClockwise } from '../geometry/index.ts'
import type { Polygon } from '../geometry/types.ts'
import type { FreePanel } from './cloth-of.ts'
import { groundOf } from './ground.ts'
import { offcutsOf, type Remainder } from './offcuts-of.ts'
import { outlineWithin } from './overlaps.ts'
import { isSameCopy, type LaidPiece, type Reservation } from './reservation.ts'

export interface CutRequest {
  readonly panel: FreePanel
  /** The reservation whose pieces are cut. */
  readonly reservation: string
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
export function cutApart({ panel, reservation, pieces, reservations, sliver }: CutRequest): CutApart {
  const isOn = (laid: LaidPiece) => laid.panel === panel.id
  const isCut = (one: Reservation, laid: LaidPiece) =>
    one.id === reservation && isOn(laid) && pieces.some((cut) => isSameCopy(cut, laid))
  const others = reservations.flatMap((one) =>
    one.pieces.filter((laid) => isOn(laid) && !isCut(one, laid)).map(({ outline }) => outline),
  )
  const remainder = offcutsOf({
    outline: panel.outline,
    flaws: panel.flaws,
    pieces: pieces.flatMap((laid) => groundOf(laid.outline, panel.hemmed)),
    reserved: others,
    sliver,
  })
  const after = (one: Reservation, ids: readonly string[]): Reservation => {
    const left = one.pieces.filter((laid) => !isCut(one, laid))
    const pieces = left.map((laid) =>
      isOn(laid) ? { ...laid, panel: homeAmong(remainder, ids, laid) } : laid,
    )
    return { ...one, pieces }
  }
  return {
    ...remainder,
    outline: outlineFor(panel, pieces),
    flaws: panel.flaws,
    moved: (ids) => reservations.filter((one) => one.pieces.some(isOn)).map((one) => after(one, ids)),
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
