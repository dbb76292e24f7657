import type { Cut } from '../../core/stash/cut.ts'
import { isSameCopy, type LaidPiece, type Reservation } from '../../core/stash/reservation.ts'
import type { Store } from '../open-store.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'
import { CutAgain, NoLongerThere } from './refusals.ts'

/**
 * Takes a cut back, as if it had never been: the panel is whole, its offcuts are gone, the pieces are reserved again, and
 * what was reserved or marked on the offcuts is on the panel. Rejects with `CutAgain` once something was cut from one of
 * the offcuts, with `NoLongerThere` if there is no such cut. Without its project the pieces' places are simply free.
 */
export function undoCut(store: Store<unknown>, id: string): Promise<void> {
  const names = ['garments', 'projects', 'reservations', 'cuts', 'offcuts'] as const
  return writeRecords(store, names, async (writing) => {
    const cut = await writing.get('cuts', id)
    if (!cut) throw new NoLongerThere('the cut is there no more')
    const later = (await writing.ofGarment('cuts', cut.garment)).find((one) =>
      cut.offcuts.includes(one.panel),
    )
    if (later) throw new CutAgain('something was cut from one of its offcuts since', later.project)
    await moveBack(writing, cut)
    await reserveAgain(writing, cut)
    await moveFlawsBack(writing, cut)
    for (const offcut of cut.offcuts) await writing.remove('offcuts', offcut)
    await writing.remove('cuts', id)
  })
}

/** Reserved places on the offcuts are places on the panel again: the coordinates are the same. */
async function moveBack(writing: RecordWriting, cut: Cut): Promise<void> {
  for (const reservation of await writing.ofGarment('reservations', cut.garment)) {
    if (!reservation.pieces.some(({ panel }) => cut.offcuts.includes(panel))) continue
    const pieces = reservation.pieces.map((laid) =>
      cut.offcuts.includes(laid.panel) ? { ...laid, panel: cut.panel } : laid,
    )
    await writing.put('reservations', { ...reservation, pieces })
  }
}

/** Copies that the project has laid elsewhere since are not laid twice. */
async function reserveAgain(writing: RecordWriting, cut: Cut): Promise<void> {
  const project = await writing.get('projects', cut.project)
  if (!project) return
  const reserved = await writing.ofProject('reservations', cut.project)
  const isLaid = (copy: LaidPiece) =>
    reserved.some(({ pieces }) => pieces.some((laid) => isSameCopy(laid, copy)))
  const pieces = cut.pieces.filter((piece) => !isLaid(piece))
  if (pieces.length === 0) return
  const { reservation: id, garment } = cut
  const before = await writing.get('reservations', id)
  const clearance = Math.max(project.clearance, project.pattern.clearance)
  const empty: Reservation = { id, project: project.id, garment, pieces: [], clearance, spare: null }
  const { pieces: others, ...rest } = before ?? empty
  await writing.put('reservations', { ...rest, pieces: [...others, ...pieces] })
}

async function moveFlawsBack(writing: RecordWriting, cut: Cut): Promise<void> {
  const garment = await writing.get('garments', cut.garment)
  if (!garment?.flaws.some(({ panel }) => cut.offcuts.includes(panel))) return
  const flaws = garment.flaws.map((flaw) =>
    cut.offcuts.includes(flaw.panel) ? { ...flaw, panel: cut.panel } : flaw,
  )
  await writing.put('garments', { ...garment, flaws })
}
