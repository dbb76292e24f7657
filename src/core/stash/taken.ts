import type { Polygon } from '../geometry/types.ts'
import type { Cut, Offcut } from './cut.ts'
import type { Reservation } from './reservation.ts'

/** What is recorded of the cloth of garments: of one, or of all; each function takes what is its garment's. */
export interface ClothRecords {
  readonly cuts: readonly Cut[]
  readonly offcuts: readonly Offcut[]
  readonly reservations: readonly Reservation[]
}

export const NO_RECORDS: ClothRecords = { cuts: [], offcuts: [], reservations: [] }

export const NOTHING_TAKEN: Taken = { cut: [], offcuts: [], reserved: [] }

/** What a garment has no more, has instead, and has promised: all that a solver need know of its past. */
export interface Taken {
  /** Ids of the panels, as the garment opens into them, that were cut. */
  readonly cut: readonly string[]
  /** What was kept of them and not cut again. */
  readonly offcuts: readonly FreeOffcut[]
  readonly reserved: readonly ReservedPlace[]
}

export type FreeOffcut = Pick<Offcut, 'id' | 'outline' | 'flaws'>

/** Where a piece will be cut from. */
export interface ReservedPlace {
  readonly reservation: string
  readonly project: string
  readonly piece: string
  readonly copy: number
  readonly panel: string
  readonly outline: Polygon
}

/**
 * What is taken of the garment of this id. `except`: a project whose reservations count for nothing, to lay it again
 * round those of the others.
 */
export function takenOf(garment: string, records: ClothRecords, except: string | null = null): Taken {
  const here = ofGarment(garment, records)
  const cut = here.cuts.map(({ panel }) => panel)
  return {
    cut,
    offcuts: here.offcuts
      .filter(({ id, kept }) => kept && !cut.includes(id))
      .map(({ id, outline, flaws }) => ({ id, outline, flaws })),
    reserved: here.reservations.filter(({ project }) => project !== except).flatMap(placesOf),
  }
}

/**
 * What is taken of the garment when these pieces of a project are to be laid: its other pieces stay where they are
 * reserved, and so does what is reserved for others.
 */
export function takenBeside(
  garment: string,
  records: ClothRecords,
  project: string,
  pieces: readonly string[],
): Taken {
  const taken = takenOf(garment, records)
  const isOwn = (place: ReservedPlace) => place.project === project && pieces.includes(place.piece)
  return { ...taken, reserved: taken.reserved.filter((place) => !isOwn(place)) }
}

/** The records of the garment of this id. */
export function ofGarment(garment: string, { cuts, offcuts, reservations }: ClothRecords): ClothRecords {
  const here = (record: { readonly garment: string }) => record.garment === garment
  return { cuts: cuts.filter(here), offcuts: offcuts.filter(here), reservations: reservations.filter(here) }
}

/** The records of each garment that has any, by its id: for whoever asks of many garments. */
export function recordsByGarment(records: ClothRecords): ReadonlyMap<string, ClothRecords> {
  const all = new Map<string, { cuts: Cut[]; offcuts: Offcut[]; reservations: Reservation[] }>()
  const of = (garment: string) => {
    const known = all.get(garment) ?? { cuts: [], offcuts: [], reservations: [] }
    all.set(garment, known)
    return known
  }
  for (const cut of records.cuts) of(cut.garment).cuts.push(cut)
  for (const offcut of records.offcuts) of(offcut.garment).offcuts.push(offcut)
  for (const reservation of records.reservations) of(reservation.garment).reservations.push(reservation)
  return all
}

export function placesOf({ id, project, pieces }: Reservation): readonly ReservedPlace[] {
  return pieces.map(({ piece, copy, panel, outline }) => ({
    reservation: id,
    project,
    piece,
    copy,
    panel,
    outline,
  }))
}
