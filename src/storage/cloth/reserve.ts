import type { Garment } from '../../core/garments/garment.ts'
import { clothOf } from '../../core/stash/cloth-of.ts'
import type { Project } from '../../core/stash/project.ts'
import { isSameCopy, type Reservation } from '../../core/stash/reservation.ts'
import { reservationFaults } from '../../core/stash/reservation-faults.ts'
import type { ClothRecords } from '../../core/stash/taken.ts'
import type { Store } from '../open-store.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'
import { NoLongerThere, refusalOf } from './refusals.ts'

/** What accepting a lay changes beside the reservation: a remedy may have mended the garment or altered the pattern. */
export interface Accepted {
  readonly reservation: Reservation
  readonly garment?: Garment
  readonly project?: Project
}

/**
 * Reserves a lay, over the reservation of the same id if there is one, with the changes that it came with. The same copies
 * leave the project's other reservations. Everything is checked against what is stored, in the transaction that writes:
 * rejects with `ClothTaken` when a place was promised or cut meanwhile, with `LayNoLongerHolds` when the cloth as
 * described has no such place, with `NoLongerThere` when project or garment were removed.
 */
export function reserve(store: Store<unknown>, accepted: Accepted): Promise<void> {
  return reserveAll(store, [accepted])
}

/** Reserves several lays, each as `reserve` does: all of them, or none. No copy is in two of them. */
export function reserveAll(store: Store<unknown>, all: readonly Accepted[]): Promise<void> {
  const names = ['garments', 'projects', 'reservations', 'cuts', 'offcuts'] as const
  return writeRecords(store, names, async (writing) => {
    const reservations = all.map(({ reservation }) => reservation)
    for (const { project, garment } of all) {
      if (project) await writing.put('projects', project)
      if (garment) await writing.put('garments', garment)
    }
    for (const { project } of reservations)
      if (!(await writing.get('projects', project))) throw new NoLongerThere(`there is no project ${project}`)
    for (const reservation of reservations) await writing.put('reservations', reservation)
    for (const reservation of reservations) await takeFromOthers(writing, reservation)
    // Last, so that each is held against all the others.
    for (const reservation of reservations) await checkPlaces(writing, reservation)
  })
}

/** Throws unless every piece has its place on the cloth as it is stored. */
export async function checkPlaces(writing: RecordWriting, reservation: Reservation): Promise<void> {
  const garment = await writing.get('garments', reservation.garment)
  if (!garment) throw new NoLongerThere(`there is no garment ${reservation.garment}`)
  const faults = reservationFaults(reservation, clothOf(garment, await clothRecords(writing, garment.id)))
  if (faults.length > 0) throw refusalOf(faults)
}

/** What is stored of a garment's cloth. */
export async function clothRecords(writing: RecordWriting, garment: string): Promise<ClothRecords> {
  return {
    cuts: await writing.ofGarment('cuts', garment),
    offcuts: await writing.ofGarment('offcuts', garment),
    reservations: await writing.ofGarment('reservations', garment),
  }
}

/** A copy is laid once: the older reservations of the project give up those that are laid now. */
async function takeFromOthers(writing: RecordWriting, { id, project, pieces }: Reservation): Promise<void> {
  for (const other of await writing.ofProject('reservations', project)) {
    if (other.id === id) continue
    const left = other.pieces.filter((piece) => !pieces.some((laid) => isSameCopy(laid, piece)))
    if (left.length === other.pieces.length) continue
    if (left.length === 0) await writing.remove('reservations', other.id)
    else await writing.put('reservations', { ...other, pieces: left })
  }
}
