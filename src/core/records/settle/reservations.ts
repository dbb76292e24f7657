import { groundOf } from '../../stash/ground.ts'
import { outlinesOverlap } from '../../stash/overlaps.ts'
import type { LaidPiece, Reservation } from '../../stash/reservation.ts'
import type { Kept, RecordRef } from '../record.ts'
import { homeOf } from './home.ts'
import type { Settlement, Settling } from './state.ts'

type Stored = Kept<Reservation>

/** What has its place already: by panel, the pieces there; by copy of a piece, who has it. */
interface Taken {
  readonly places: Map<string, { readonly piece: LaidPiece; readonly by: RecordRef }[]>
  readonly copies: Map<string, RecordRef>
}

/**
 * The last changed reservation keeps its place and its copies; an earlier one loses the copies that are cut or laid
 * elsewhere by now, and is released as a whole when its place is taken or no longer there.
 */
export function settleReservations(settling: Settling): void {
  const taken: Taken = { places: new Map(), copies: new Map() }
  for (const { id, value } of settling.kept('cuts'))
    for (const piece of value.pieces) taken.copies.set(copyKey(value.project, piece), { store: 'cuts', id })
  for (const reservation of settling.kept('reservations')) settleOne(settling, taken, reservation)
}

function settleOne(settling: Settling, taken: Taken, { id, value }: Stored): void {
  const own: RecordRef = { store: 'reservations', id }
  const left = whatIsLeft(settling, taken, own, value)
  if ('what' in left) {
    settling.remove(own)
    settling.settlements.push(left)
    return
  }
  keep(settling, own, value, left.pieces)
  for (const piece of left.pieces) {
    taken.copies.set(copyKey(value.project, piece), own)
    const key = placeKey(value.garment, piece.panel)
    taken.places.set(key, [...(taken.places.get(key) ?? []), { piece, by: own }])
  }
}

/** The pieces it keeps, each on the panel where it lies now, or why it must be released. */
function whatIsLeft(
  settling: Settling,
  taken: Taken,
  own: RecordRef,
  { project, garment, pieces }: Reservation,
): { readonly pieces: readonly LaidPiece[] } | Settlement {
  const others = pieces.flatMap((piece) => taken.copies.get(copyKey(project, piece)) ?? [])
  const [by] = others
  if (by && others.length === pieces.length) return { ...own, what: 'released', why: 'laid-twice', by }

  const laid: LaidPiece[] = []
  for (const piece of pieces) {
    if (taken.copies.has(copyKey(project, piece))) continue
    const panel = homeOf(settling, garment, piece)
    if (panel === null) return { ...own, what: 'released', why: 'no-cloth' }
    laid.push(panel === piece.panel ? piece : { ...piece, panel })
  }
  const inTheWay = laid.flatMap((piece) => whoIsAt(settling, taken, garment, piece))[0]
  if (inTheWay) return { ...own, what: 'released', why: 'place-taken', by: inTheWay }
  return { pieces: laid }
}

/** Stores what has become of it, if anything. */
function keep(settling: Settling, own: RecordRef, before: Reservation, pieces: readonly LaidPiece[]): void {
  const fewer = before.pieces.length - pieces.length
  const moved = pieces.some((piece) => !before.pieces.includes(piece))
  if (fewer > 0) settling.settlements.push({ ...own, what: 'copies-taken-off', copies: fewer })
  if (moved) settling.settlements.push({ ...own, what: 'moved' })
  if (fewer > 0 || moved) settling.changeReservation(own.id, { ...before, pieces })
}

function whoIsAt(
  settling: Settling,
  { places }: Taken,
  garment: string,
  piece: LaidPiece,
): readonly RecordRef[] {
  const there = places.get(placeKey(garment, piece.panel)) ?? []
  if (there.length === 0) return []
  const hemmed = settling.hemmed(garment, piece.panel)
  const ground = groundOf(piece.outline, hemmed)
  const isInTheWay = (other: LaidPiece) =>
    groundOf(other.outline, hemmed).some((part) => ground.some((own) => outlinesOverlap(part, own)))
  return there.filter((other) => isInTheWay(other.piece)).map(({ by }) => by)
}

function placeKey(garment: string, panel: string): string {
  return JSON.stringify([garment, panel])
}

function copyKey(project: string, { piece, copy }: LaidPiece): string {
  return JSON.stringify([project, piece, copy])
}
