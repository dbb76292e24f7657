import { sooner } from '../base/deadline.ts'
import type { Mm } from '../base/units.ts'
import type { Garment } from '../garments/garment.ts'
import { carriedOver } from './carried-over.ts'
import type { CheckAnswer, CheckQuestion, SolveControl } from './check.ts'
import { layProblemFor } from './check-problem.ts'
import { checkQuestion } from './check-question.ts'
import type { Lay } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'
import { measuresAsked, withMeasuresRaised, withMeasuresReduced } from './measures-off.ts'
import { translateProblem } from './translate.ts'

/** What became of the answer when one measure was moved by the doubt. */
export interface MeasureOutcome {
  readonly measure: string
  /** How far it was moved: less where the question fits, more where it does not. */
  readonly by: Mm
  /** null: with this figure there is no such garment, or nothing left of it. */
  readonly verdict: Lay['verdict'] | null
  /** No more than was asked: half of the question's spare, or, where it does not fit, as much as `doubt`. null: not known. */
  readonly spare: Mm | null
  /** True for a measure worth taking again: it takes away the lay or most of its spare, or it brings one. */
  readonly binds: boolean
}

/** A measure binds if less than this share of the spare is left without it. */
const LEAST_LEFT = 0.5

type MeasureControl = Pick<SolveControl, 'seed' | 'clock' | 'deadline'>

/**
 * Moves each measure by `doubt` and solves again: down where the question fits, to find those that the lay hangs on; up
 * where it does not, to find a single one that would save it. Yields each as it is solved and ends at the
 * deadline. A lay not found in the time a measure gets counts against it, so `binds` may be said too often, never
 * that a lay is there when none is; but a measure that no panel in use hangs on never binds, and less to spare is only
 * said where it was found. A drawn outline has no measures and yields nothing.
 */
export function* bindingMeasures(
  question: CheckQuestion,
  answer: CheckAnswer,
  doubt: Mm,
  control: MeasureControl,
): Generator<MeasureOutcome, void> {
  const { deadline, clock } = control
  const measures = measuresAsked(question.garment)
  const fits = answer.lay.verdict === 'fits'
  for (const [k, measure] of measures.entries()) {
    if (deadline.passed()) return
    const slice = sooner(deadline, deadline.left() / (measures.length - k), clock)
    const moved = fits ? withMeasuresReduced : withMeasuresRaised
    const garment = moved(question.garment, doubt, [measure])
    const by = (garment.measures[measure] ?? 0) - (question.garment.measures[measure] ?? 0)
    yield { measure, by, ...became(question, answer, garment, doubt, { ...control, deadline: slice }) }
  }
}

type Became = Pick<MeasureOutcome, 'verdict' | 'spare' | 'binds'>

function became(
  question: CheckQuestion,
  answer: CheckAnswer,
  garment: Garment,
  doubt: Mm,
  control: MeasureControl,
): Became {
  const { lay, heads } = answer
  const problem = layProblemFor({ ...question, garment }, heads)
  if (problem.ok && !touchesUsed(answer, problem.value))
    return { verdict: lay.verdict, spare: lay.spare, binds: false }
  const fits = lay.verdict === 'fits'
  const spareAsked = fits ? LEAST_LEFT * (lay.spare ?? 0) : doubt
  const tried = { ...control, spareAsked, warmStart: lay.placements }
  const result = checkQuestion({ ...question, garment }, tried)
  if (!result.ok) return { verdict: null, spare: null, binds: fits }
  const { verdict, spare } = result.value.lay
  const binds = fits ? loses(result.value.lay, lay) : brings(result.value, question, answer, control)
  return { verdict, spare, binds }
}

/** True if some panel that pieces lie on, or where none has a place may lie on, is another one now. */
function touchesUsed({ problem, lay }: CheckAnswer, moved: LayProblem): boolean {
  const serving = (each: LayProblem) => translateProblem(each).panels.map(({ id }) => id)
  const used =
    lay.verdict === 'fits'
      ? lay.placements.map(({ panel }) => panel)
      : [...serving(problem), ...serving(moved)]
  const textOf = ({ panels }: LayProblem, id: string) => JSON.stringify(panels.find((each) => each.id === id))
  return [...new Set(used)].some((id) => textOf(problem, id) !== textOf(moved, id))
}

function loses({ verdict, spare, spareIs }: Lay, before: Lay): boolean {
  if (verdict !== 'fits') return true
  return spareIs === 'found' && (spare ?? 0) < LEAST_LEFT * (before.spare ?? 0)
}

/** True if it fits now, and did not before: what was only not found may be found from the lay that there is now. */
function brings(
  now: CheckAnswer,
  question: CheckQuestion,
  { problem, lay }: CheckAnswer,
  control: MeasureControl,
): boolean {
  if (now.lay.verdict !== 'fits') return false
  if (lay.verdict === 'cannot') return true
  const again = checkQuestion(question, { ...control, warmStart: carriedOver(problem, now), spareAsked: 0 })
  return !again.ok || again.value.lay.verdict !== 'fits'
}
