import { sooner } from '../base/deadline.ts'
import type { Mm } from '../base/units.ts'
import type { CheckAnswer, CheckQuestion, SolveControl } from './check.ts'
import { checkQuestion } from './check-question.ts'
import type { Lay } from './lay.ts'
import { measuresAsked, withMeasuresRaised, withMeasuresReduced } from './measures-off.ts'

/** What became of the answer when one measure was moved by the doubt. */
export interface MeasureOutcome {
  readonly measure: string
  /** How far it was moved: less where the question fits, more where it does not. */
  readonly by: Mm
  /** null: with this figure there is no such garment, or nothing left of it. */
  readonly verdict: Lay['verdict'] | null
  /** Only whether half of the question's spare is left, or, where it had none, whether there is as much as `doubt`: so much, or 0. */
  readonly spare: Mm | null
  /** True for a measure worth taking again: it takes away the lay or most of its spare, or it brings one. */
  readonly binds: boolean
}

/** A measure binds if less than this share of the spare is left without it. */
const LEAST_LEFT = 0.5

/**
 * Moves each measure by `doubt` and solves again: down where the question fits, to find those that the lay hangs on; up
 * where it does not, to find a single one that would save it. Yields each as it is solved and ends at the
 * deadline. A lay not found in the time a measure gets counts against it, so `binds` may be said too often, never
 * that a lay is there when none is. A drawn outline has no measures and yields nothing.
 */
export function* bindingMeasures(
  question: CheckQuestion,
  { lay }: CheckAnswer,
  doubt: Mm,
  { seed, clock, deadline }: Pick<SolveControl, 'seed' | 'clock' | 'deadline'>,
): Generator<MeasureOutcome, void> {
  const fits = lay.verdict === 'fits'
  const spareAsked = fits ? LEAST_LEFT * (lay.spare ?? 0) : doubt
  const measures = measuresAsked(question.garment)
  for (const [k, measure] of measures.entries()) {
    if (deadline.passed()) return
    const moved = fits ? withMeasuresReduced : withMeasuresRaised
    const garment = moved(question.garment, doubt, [measure])
    const slice = sooner(deadline, deadline.left() / (measures.length - k), clock)
    const control = { seed, clock, deadline: slice, warmStart: lay.placements, spareAsked }
    const result = checkQuestion({ ...question, garment }, control)
    const { verdict = null, spare = null } = result.ok ? result.value.lay : {}
    const by = (garment.measures[measure] ?? 0) - (question.garment.measures[measure] ?? 0)
    yield { measure, by, verdict, spare, binds: fits ? loses(verdict, spare, lay) : verdict === 'fits' }
  }
}

function loses(verdict: Lay['verdict'] | null, left: Mm | null, { spare }: Lay): boolean {
  return verdict !== 'fits' || (left ?? 0) < LEAST_LEFT * (spare ?? 0)
}
