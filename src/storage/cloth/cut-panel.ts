import type { Mm } from '../../core/base/units.ts'
import { clothOf, type FreePanel } from '../../core/stash/cloth-of.ts'
import type { Cut, Offcut } from '../../core/stash/cut.ts'
import { cutApart } from '../../core/stash/cut-apart.ts'
import {
  type CopyOfPiece,
  isSameCopy,
  type LaidPiece,
  type Reservation,
} from '../../core/stash/reservation.ts'
import type { Store } from '../open-store.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'
import { NoLongerThere } from './refusals.ts'
import { clothRecords } from './reserve.ts'

/** What is cut now. */
export interface CuttingOrder {
  readonly reservation: string
  readonly panel: string
  /** Copies to cut; absent: all that the reservation has on the panel. */
  readonly pieces?: readonly CopyOfPiece[]
  /** Narrower strips are not kept. */
  readonly sliver: Mm
  /** Makes ids that no other device makes. */
  readonly newId: () => string
}

export interface DoneCut {
  readonly cut: Cut
  readonly offcuts: readonly Offcut[]
  /** What is left and not kept, mm². */
  readonly sliverArea: number
}

/**
 * Cuts reserved pieces from a panel: they leave their reservation, the panel gives way to its offcuts, and whatever else is
 * reserved on it moves to the offcut that holds it, all in one transaction. Rejects with `NoLongerThere` when the
 * reservation, its garment, the panel or any of the pieces is there no more.
 */
export function cutPanel(store: Store<unknown>, order: CuttingOrder): Promise<DoneCut> {
  const names = ['garments', 'reservations', 'cuts', 'offcuts'] as const
  return writeRecords(store, names, async (writing) => {
    const reservation = await writing.get('reservations', order.reservation)
    if (!reservation) throw new NoLongerThere('the reservation is there no more')
    const { project, garment } = reservation
    const records = await clothRecords(writing, garment)
    const panel = await freePanel(writing, garment, order.panel, records)
    const pieces = piecesToCut(reservation, order)
    const { sliver } = order
    const apart = cutApart({
      panel,
      reservation: reservation.id,
      pieces,
      reservations: records.reservations,
      sliver,
    })
    const { outline, flaws } = apart
    const ids = apart.offcuts.map(() => order.newId())
    const cut: Cut = {
      id: order.newId(),
      project,
      garment,
      panel: panel.id,
      outline,
      flaws,
      pieces,
      reservation: reservation.id,
      offcuts: ids,
      at: writing.now,
    }
    const offcuts = apart.offcuts.map(
      (offcut, i): Offcut => ({ id: ids[i] as string, garment, cut: cut.id, ...offcut, kept: true }),
    )
    await writing.put('cuts', cut)
    for (const offcut of offcuts) await writing.put('offcuts', offcut)
    for (const moved of apart.moved(ids)) await putOrRemove(writing, moved)
    return { cut, offcuts, sliverArea: apart.sliverArea }
  })
}

async function freePanel(
  writing: RecordWriting,
  garmentId: string,
  id: string,
  records: Awaited<ReturnType<typeof clothRecords>>,
): Promise<FreePanel> {
  const garment = await writing.get('garments', garmentId)
  if (!garment) throw new NoLongerThere(`there is no garment ${garmentId}`)
  const panel = clothOf(garment, records).panels.find((one) => one.id === id)
  if (!panel) throw new NoLongerThere(`panel ${id} is there no more`)
  return panel
}

function piecesToCut(reservation: Reservation, { panel, pieces }: CuttingOrder): readonly LaidPiece[] {
  const there = reservation.pieces.filter((laid) => laid.panel === panel)
  const wanted = there.filter((laid) => !pieces || pieces.some((copy) => isSameCopy(laid, copy)))
  if (wanted.length === 0 || (pieces && wanted.length < pieces.length))
    throw new NoLongerThere(`not all of these pieces are reserved on ${panel}`)
  return wanted
}

/** A reservation whose last piece was cut has done its work. */
async function putOrRemove(writing: RecordWriting, reservation: Reservation): Promise<void> {
  if (reservation.pieces.length > 0) await writing.put('reservations', reservation)
  else await writing.remove('reservations', reservation.id)
}
