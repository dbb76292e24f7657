import { type Signal, signal } from '@preact/signals'
import type { CheckQuestion } from '../../core/planning/check.ts'
import type { AnsweredLay } from '../../core/planning/reservation-from.ts'
import type { Reservation } from '../../core/stash/reservation.ts'
import { SLIVER_WIDTH } from '../../core/stash/sliver.ts'
import type { ClothRecords } from '../../core/stash/taken.ts'
import type { CuttingOrder, DoneCut } from '../../storage/cloth/cut-panel.ts'
import { StashRefusal } from '../../storage/cloth/refusals.ts'
import type { Accepted } from '../../storage/cloth/reserve.ts'
import { onStoreChange, type Store } from '../../storage/open-store.ts'
import type { Unreadable } from '../../storage/reading.ts'
import { readClothRecords } from '../../storage/stores/cloth-records.ts'
import { keepOffcut as keepStoredOffcut } from '../../storage/stores/cuts.ts'
import { releaseReservation as releaseStored } from '../../storage/stores/reservations.ts'
import { storeTrouble, theStore } from './keeper.ts'
import { newId } from './new-id.ts'
import { projectsWritten } from './projects-state.ts'
import { restoreRemoval } from './restore-removal.ts'
import { stashWritten } from './stash-state.ts'
import { offerUndo } from './undo.ts'

/** Everything reserved, cut and left over, of all garments, as it was at one moment. */
export const clothRecords: Signal<ClothRecords> = signal({ cuts: [], offcuts: [], reservations: [] })
export const unreadableCloth: Signal<readonly Unreadable[]> = signal([])

/** False until `clothRecords` holds what is stored. */
export const clothOpen = signal(false)

/** Why the stash refused what was asked last: it had changed meanwhile. null: it did not. */
export const clothRefusal = signal<StashRefusal | null>(null)

let opening: Promise<void> | null = null

/** Reads what is reserved and cut, once, and follows the changes of every tab. */
export function openCloth(): Promise<void> {
  opening ??= follow()
  return opening
}

async function follow(): Promise<void> {
  try {
    const store = await theStore()
    onStoreChange(store, (names) => {
      if (names.some((name) => name === 'reservations' || name === 'cuts' || name === 'offcuts'))
        void readAgain(store)
    })
    await readAgain(store)
  } catch (error) {
    storeTrouble.value = error
  }
  clothOpen.value = true
}

let reads = 0

async function readAgain(store: Store<unknown>): Promise<void> {
  reads += 1
  const turn = reads
  try {
    const { records, unreadable } = await readClothRecords(store)
    // Reading takes a while: what was read first is not shown over what was read since.
    if (turn !== reads) return
    clothRecords.value = records
    unreadableCloth.value = unreadable
  } catch (error) {
    storeTrouble.value = error
  }
}

/** Reserves; null when it could not, and `clothRefusal` or `storeTrouble` says why. */
export async function reserve(accepted: Accepted): Promise<Reservation | null> {
  return attempt(async (store) => {
    const writes = await import('./cloth-writes.ts')
    await writes.reserve(store, accepted)
    return accepted.reservation
  })
}

/** A lay that she accepts, and what it changes. */
export interface AcceptedLay extends Omit<Accepted, 'reservation'> {
  readonly answer: AnsweredLay
  /** What it answers; needed only where some copies were asked for. */
  readonly question?: Pick<CheckQuestion, 'pattern' | 'copies'>
  /** Ids. */
  readonly of: Pick<Reservation, 'project' | 'garment'>
  /** Id of the reservation in which this lay takes the place of its pieces; what was not asked stays. Absent: none. */
  readonly replaces?: string
}

/** Reserves the places of a lay. null when it could not, and `clothRefusal` or `storeTrouble` says why. */
export async function reserveLay(lay: AcceptedLay): Promise<Reservation | null> {
  return reserve(await acceptedFrom(lay))
}

/** Reserves the places of several lays: all of them, or none. Otherwise as `reserveLay`. */
export async function reserveLays(lays: readonly AcceptedLay[]): Promise<readonly Reservation[] | null> {
  const accepted = await Promise.all(lays.map(acceptedFrom))
  return attempt(async (store) => {
    const { reserveAll } = await import('./cloth-writes.ts')
    await reserveAll(store, accepted)
    return accepted.map(({ reservation }) => reservation)
  })
}

async function acceptedFrom({ answer, question, of, replaces, ...rest }: AcceptedLay): Promise<Accepted> {
  const { reservationFrom } = await import('./cloth-writes.ts')
  const laid = reservationFrom(answer, { ...of, id: replaces ?? newId() }, question)
  const asked = new Set([
    ...answer.problem.pieces.map(({ id }) => id),
    ...laid.pieces.map(({ piece }) => piece),
  ])
  const before = clothRecords.value.reservations.find(({ id }) => id === replaces)
  const stay = before?.pieces.filter(({ piece }) => !asked.has(piece)) ?? []
  return { ...rest, reservation: { ...laid, pieces: [...stay, ...laid.pieces] } }
}

/** Gives reserved cloth free, and offers to take that back. */
export async function releaseReservation({ id }: Pick<Reservation, 'id'>, said: string): Promise<void> {
  const removal = await attempt((store) => releaseStored(store, id))
  if (removal && removal.records.length > 0) offerUndo(said, () => void restoreRemoval(removal))
}

/** What is cut now; strips narrower than `sliver` are not kept. */
export type CutNow = Omit<CuttingOrder, 'newId' | 'sliver'> & Partial<Pick<CuttingOrder, 'sliver'>>

/**
 * Notes that reserved pieces were cut, and offers to take that back. null when it could not, and `clothRefusal` or
 * `storeTrouble` says why.
 */
export async function cutNow(order: CutNow, said: string): Promise<DoneCut | null> {
  const done = await attempt(async (store) => {
    const { cutPanel } = await import('./cloth-writes.ts')
    return cutPanel(store, { sliver: SLIVER_WIDTH, ...order, newId })
  })
  if (done) offerUndo(said, () => void undoCut(done.cut.id), 'tick')
  return done
}

/** Takes a cut back. False when it could not, and `clothRefusal` or `storeTrouble` says why. */
export async function undoCut(id: string): Promise<boolean> {
  const done = await attempt(async (store) => {
    const writes = await import('./cloth-writes.ts')
    await writes.undoCut(store, id)
    return true
  })
  return done ?? false
}

/** Throws an offcut away (`kept` false) or takes it back, and offers the reverse. */
export async function keepOffcut(id: string, kept: boolean, said: string): Promise<void> {
  const done = await attempt(async (store) => {
    await keepStoredOffcut(store, id, kept)
    return true
  })
  if (done) offerUndo(said, () => void attempt((store) => keepStoredOffcut(store, id, !kept)))
}

/** The work's value, or null: then a signal says why. What screens have changed before is stored first. */
async function attempt<T>(work: (store: Store<unknown>) => Promise<T>): Promise<T | null> {
  try {
    const store = await theStore()
    await Promise.all([projectsWritten(), stashWritten()])
    const value = await work(store)
    clothRefusal.value = null
    storeTrouble.value = null
    return value
  } catch (error) {
    if (error instanceof StashRefusal) clothRefusal.value = error
    else storeTrouble.value = error
    return null
  }
}
