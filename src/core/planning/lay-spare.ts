import type { Deadline } from '../base/deadline.ts'
import type { Mm } from '../base/units.ts'
import { groupAtOdds } from '../packing/alike/agreeing.ts'
import { heldAlike, mayLie } from '../packing/alike/restrict.ts'
import { type InsetPacking, type SpareFound, spare } from '../packing/spare.ts'
import { unplaced } from '../packing/taken-over.ts'
import { carriedOver, type KnownLay } from './carried-over.ts'
import type { Lay } from './lay.ts'
import { isTrue, layOf } from './lay-of.ts'
import type { LayProblem } from './lay-problem.ts'
import { type Translation, translateProblem } from './translate.ts'
import { placementsFrom } from './warm-start.ts'
import { insistingOnHeld } from './wishes.ts'

/** How far and how long to look for what is to spare, and from what. */
export interface LaySpareControl {
  readonly seed: number
  readonly deadline: Deadline
  /** So much is enough. Absent: the most there is. */
  readonly upTo?: Mm
  /** Lays of questions that asked as much of no more cloth: what they have to spare is looked for here first. */
  readonly known?: readonly KnownLay[]
  /** Called with the lay whenever it is found to have more to spare. */
  readonly onBetter?: (lay: Lay) => void
}

/**
 * The lay with what it has to spare, and with the places that have it: a search for more may move every piece. It goes on
 * from what the lay is known to have. Finished edges that the lay keeps, it goes on keeping. A lay that does not fit is
 * given back as it is.
 */
export function withSpare(problem: LayProblem, lay: Lay, control: LaySpareControl): Lay {
  if (lay.verdict !== 'fits') return lay
  const { known = [], onBetter, ...limits } = control
  const translation = translateProblem(insistingOnHeld(problem, lay.placements))
  const at = (placements: Lay['placements'], inset: Mm | null): readonly InsetPacking[] =>
    inset ? [{ inset, placements: placementsFrom(translation, placements) }] : []
  const starts = [
    ...known.flatMap((other) => at(carriedOver(problem, other), other.lay.spare)),
    ...at(lay.placements, lay.spare),
  ].sort((a, b) => b.inset - a.inset)
  const better = (found: SpareFound) => layWith(translation, found, lay)
  const told = { ...limits, ...(onBetter ? { onBetter: (each: SpareFound) => onBetter(better(each)) } : {}) }
  const { packing } = translation
  const own = placementsFrom(translation, lay.placements)
  const held = heldAlike(packing, own)
  let found = spare(held, own, { ...told, starts })
  // What turns alike keeps to the turns of the lay; a lay known before may have others, and more to spare.
  for (const start of starts) {
    const tried = start.placements.every((placement) => mayLie(held, placement))
    if (tried || start.inset <= (found.inset ?? 0) || groupAtOdds(packing, start.placements) !== null)
      continue
    const other = spare(heldAlike(packing, start.placements), start.placements, { ...told, starts: [start] })
    if ((other.inset ?? 0) > (found.inset ?? 0)) found = other
  }
  return better(found)
}

function layWith(translation: Translation, { inset, ended, placements }: SpareFound, lay: Lay): Lay {
  const { packing } = translation
  const placed = { verdict: 'fits', placements, leftOut: unplaced(packing, placements) } as const
  if ((inset ?? 0) < (lay.spare ?? 0) || !isTrue(packing, placed)) return lay
  const { elapsedMs } = lay
  return { ...layOf(translation, placed), spare: inset, spareIs: ended ? 'found' : 'at-least', elapsedMs }
}
