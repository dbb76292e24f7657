import { type Deadline, sooner } from '../../base/deadline.ts'
import type { Percent } from '../../base/units.ts'
import type { CheckAnswer, CheckQuestion, SolveControl } from '../check.ts'
import { checkQuestion } from '../check-question.ts'
import { stretchLeft } from '../doubt.ts'
import { withSpare } from '../lay-spare.ts'
import { withNeedsEased } from '../stretch-doubt.ts'
import { REMEDIES } from './all.ts'
import { pairsFor, remediesFor } from './remedies-for.ts'
import type { Remedy, RemedyStep } from './remedy.ts'

/** A remedy that has been solved, one way or the other. */
export interface RemedyOutcome {
  /** With the costs as the lay found really has them. A step with no pieces left cost nothing. */
  readonly remedy: Remedy
  /** Place in the order of cost, from 0: outcomes come as they are found. Pairs come after all single ones. */
  readonly rank: number
  readonly answer: CheckAnswer
}

/** As for any check, without progress: outcomes are the progress. */
export type RemedyControl = Pick<SolveControl, 'seed' | 'clock' | 'deadline' | 'spareAsked'>

/** First look at each remedy: enough for nearly all that fit or can be refuted. */
const QUICK_MS = 300

/** Share of the time left that single remedies may take before pairs have their turn. */
const SINGLES_SHARE = 0.6

interface Candidate {
  readonly remedy: Remedy
  readonly rank: number
  /** The nearest to a lay that is known so far: of the question itself, or of an earlier look at the remedy. */
  readonly answer: CheckAnswer
}

/**
 * Solves the remedies for a question that has no answer, and yields each as soon as it is decided: a quick look at every
 * one, then a longer one at those still open, then, if none fits, pairs likewise. Once one fits, dearer ones of
 * its family (a join elsewhere in the same piece, a still smaller size) are left away. Ends at the deadline or when all are
 * decided. Work between two outcomes is blocking; whoever may have to stop gives a deadline that can be passed early.
 */
export function* solveRemedies(
  question: CheckQuestion,
  answer: CheckAnswer,
  control: RemedyControl,
): Generator<RemedyOutcome, void> {
  const singles = remediesFor(question, answer).map((remedy, rank) => ({ remedy, rank, answer }))
  const share = control.deadline.left() * SINGLES_SHARE
  const first = { ...control, deadline: sooner(control.deadline, share, control.clock) }
  const found = yield* solveAll(singles, first)
  if (found > 0 || control.deadline.passed()) return
  const pairs = pairsFor(question, answer).map((remedy, k) => ({ remedy, rank: singles.length + k, answer }))
  yield* solveAll(pairs, control)
}

/** Yields what is decided and returns how many fit. What is undecided at the end is yielded too. */
function* solveAll(
  candidates: readonly Candidate[],
  control: RemedyControl,
): Generator<RemedyOutcome, number> {
  const fitting = new Set<string>()
  const open: RemedyOutcome[] = []
  for (const candidate of candidates) {
    const outcome = solved(candidate, fitting, sooner(control.deadline, QUICK_MS, control.clock), control)
    if (outcome?.answer.lay.verdict === 'not-found') open.push(outcome)
    else if (outcome) yield outcome
  }
  for (const [k, quick] of open.entries()) {
    const slice = sooner(control.deadline, control.deadline.left() / (open.length - k), control.clock)
    const outcome = solved(quick, fitting, slice, control)
    if (outcome || !fitting.has(familyOf(quick.remedy))) yield outcome ?? quick
  }
  return fitting.size
}

/** The outcome, or null if time is up, a cheaper one of the family fits already, or the change leaves no problem to solve. */
function solved(
  { remedy, rank, answer: before }: Candidate,
  fitting: Set<string>,
  deadline: Deadline,
  control: RemedyControl,
): RemedyOutcome | null {
  const family = familyOf(remedy)
  if (fitting.has(family) || deadline.passed()) return null
  const warmStart = before.lay.placements
  const result = checkQuestion(remedy.question, {
    ...control,
    deadline,
    spareAsked: 0,
    ...(warmStart.length > 0 && { warmStart }),
  })
  if (!result.ok) return null
  if (result.value.lay.verdict !== 'fits') return { remedy, rank, answer: result.value }
  const answer = withRoom(result.value, remedy.question.stretchDoubt, control)
  fitting.add(family)
  return { remedy: { ...remedy, steps: remedy.steps.map((step) => asLaid(step, answer)) }, rank, answer }
}

/** The spare is counted in steps of its own: a quick look at whether it fits is not one at how much room is left. */
function withRoom(
  answer: CheckAnswer,
  stretchDoubt: Percent | undefined,
  { seed, deadline, spareAsked }: RemedyControl,
): CheckAnswer {
  if (spareAsked === 0) return answer
  const upTo = spareAsked === undefined ? {} : { upTo: spareAsked }
  const problem = withNeedsEased(answer.problem, -stretchLeft(answer, stretchDoubt))
  return { ...answer, lay: withSpare(problem, answer.lay, { seed, deadline, ...upTo }) }
}

function asLaid(step: RemedyStep, answer: CheckAnswer): RemedyStep {
  const maker = REMEDIES.find(({ kinds }) => kinds.includes(step.kind))
  return maker?.asLaid?.(step, answer) ?? step
}

/** Remedies of which one is enough: sizes, joins of one piece. Any other is a family by itself. */
function familyOf({ steps }: Remedy): string {
  return steps
    .map((step) => {
      if (step.kind === 'smaller-size') return step.kind
      return step.kind === 'join' ? `join ${step.piece}` : JSON.stringify(step)
    })
    .join(' + ')
}
