import { clothOf } from '../../src/core/stash/cloth-of.ts'
import type { Cut, Offcut } from '../../src/core/stash/cut.ts'
import { cutApart } from '../../src/core/stash/cut-apart.ts'
import type { Project } from '../../src/core/stash/project.ts'
import type { Reservation } from '../../src/core/stash/reservation.ts'
import { SLIVER_WIDTH } from '../../src/core/stash/sliver.ts'
import type { ClothRecords } from '../../src/core/stash/taken.ts'
import { demoGarment } from './demo-garment.ts'
import type { Plan } from './plans.ts'
import { rounded } from './rounding.ts'

/** As cutting does in the app: the panel with this piece gives way to its offcuts, and what else is reserved there moves. */
export function cutOut(
  { piece, at }: NonNullable<Plan['cut']>,
  project: Project,
  records: ClothRecords,
): ClothRecords {
  const reservation = records.reservations.find((one) => one.project === project.id) as Reservation
  const { garment, pieces: reserved } = reservation
  const where = reserved.find((laid) => laid.piece === piece)?.panel
  const panel = clothOf(demoGarment(garment), records).panels.find(({ id }) => id === where)
  if (!panel) throw new Error(`${project.name}: ${piece} is reserved nowhere`)
  const pieces = reserved.filter((laid) => laid.panel === panel.id)
  const beside = records.reservations.filter((one) => one.garment === garment)
  const apart = cutApart({
    panel,
    reservation: reservation.id,
    pieces,
    reservations: beside,
    sliver: SLIVER_WIDTH,
  })
  const ids = apart.offcuts.map((_, i) => `${project.id}-offcut-${i + 1}`)
  const cut: Cut = {
    id: `${project.id}-cut`,
    project: project.id,
    garment,
    panel: panel.id,
    outline: rounded(apart.outline),
    flaws: apart.flaws.map(rounded),
    pieces,
    reservation: reservation.id,
    offcuts: ids,
    at: Date.parse(at),
  }
  return {
    reservations: movedTo(apart.moved(ids), records.reservations),
    cuts: [...records.cuts, cut],
    offcuts: [...records.offcuts, ...apart.offcuts.map((left, i) => offcutOf(cut, ids[i] as string, left))],
  }
}

function offcutOf(cut: Cut, id: string, { outline, flaws }: Pick<Offcut, 'outline' | 'flaws'>): Offcut {
  const { garment } = cut
  return { id, garment, cut: cut.id, outline: rounded(outline), flaws: flaws.map(rounded), kept: true }
}

/** With those that changed in their places; one whose last piece was cut has done its work. */
function movedTo(changed: readonly Reservation[], all: readonly Reservation[]): readonly Reservation[] {
  const now = new Map(changed.map((one) => [one.id, one]))
  return all.map((one) => now.get(one.id) ?? one).filter(({ pieces }) => pieces.length > 0)
}
