import type { Polygon } from '../../geometry/types.ts'
import type { Offcut } from '../../stash/cut.ts'
import { outlinesOverlap, outlineWithin } from '../../stash/overlaps.ts'
import type { LaidPiece } from '../../stash/reservation.ts'
import type { Settling } from './state.ts'

/**
 * The panel on which a reserved piece lies now, null if its cloth is gone. Offcuts have the coordinates of the panel
 * they were cut from, so only the panel's name changes: up, where the cut that made the offcut was taken back, and
 * down, where the panel was cut since, to the offcut that holds the piece.
 */
export function homeOf(settling: Settling, garment: string, piece: LaidPiece): string | null {
  const cuts = settling.kept('cuts').filter((cut) => cut.value.garment === garment)
  const seen = new Set<string>()
  let panel = whole(settling, garment, piece.panel)
  // A foreign file may say that an offcut was cut from itself.
  while (!seen.has(panel)) {
    seen.add(panel)
    const cut = cuts.find(({ value }) => value.panel === panel)
    if (!cut) return panel
    const holding = settling
      .kept('offcuts')
      .find(({ value }) => value.cut === cut.id && value.kept && holds(value, piece.outline))
    if (!holding) return null
    panel = holding.id
  }
  return null
}

/** The panel itself, or the one that a vanished offcut is part of again. */
function whole(settling: Settling, garment: string, panel: string): string {
  const seen = new Set<string>()
  let above = panel
  while (!seen.has(above) && !settling.has({ store: 'offcuts', id: above })) {
    seen.add(above)
    const offcut = settling.known('offcuts', above)
    const cut = offcut && settling.known('cuts', offcut.cut)
    if (cut?.garment !== garment) break
    above = cut.panel
  }
  return above
}

function holds({ outline, flaws }: Offcut, piece: Polygon): boolean {
  return outlineWithin(piece, outline) && !flaws.some((flaw) => outlinesOverlap(flaw, piece))
}
