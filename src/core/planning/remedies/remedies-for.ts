import type { CheckAnswer, CheckQuestion } from '../check.ts'
import { CHEAP, REMEDIES } from './all.ts'
import type { Remedy, RemedyKind, RemedyMaker } from './remedy.ts'
import { hangsOnGauge } from './short-of-stretch.ts'
import { usefulSteps } from './useful.ts'
import { keepsWishes } from './wishes.ts'

/** Pairs are many and seldom wanted: those of the five cheapest kinds, then some of joins. */
const MOST_PAIRS = 10

/**
 * Changed questions that may have an answer where this one has none, cheapest to her first; none if it fits, unless it
 * needs more stretch than was measured.
 * Those that the answer's proof rules out are left away. Nothing is claimed of the others until they are solved.
 */
export function remediesFor(question: CheckQuestion, answer: CheckAnswer): readonly Remedy[] {
  if (answer.lay.verdict === 'fits' && !hangsOnGauge(answer)) return []
  const useful = usefulSteps(answer)
  return makersFor(answer)
    .flatMap(({ propose }) => propose(question, answer))
    .filter((remedy) => remedy.steps.every(useful) && keepsWishes(question, remedy))
}

/** Where it fits but for the stretch, nothing else need change. */
function makersFor(answer: CheckAnswer): readonly RemedyMaker[] {
  if (!hangsOnGauge(answer)) return REMEDIES
  return REMEDIES.filter(({ kinds }) => kinds.every((kind) => STRETCHES_LESS.includes(kind)))
}

/** What makes pieces of the same thing need less stretch, or find more. */
const STRETCHES_LESS: readonly RemedyKind[] = ['quarter-turn', 'bias-cut', 'larger-size', 'other-version']

/**
 * Two cheap changes together, ordered by the dearer of the two. One that is ruled out by itself may still be half of a pair:
 * room gained is used better by pieces that may turn. Both ruled out stay ruled out only where the proof is of area
 * or stretch, so at least one must have been of use.
 */
export function pairsFor(question: CheckQuestion, answer: CheckAnswer): readonly Remedy[] {
  if (answer.lay.verdict === 'fits') return []
  const useful = usefulSteps(answer)
  const cheap = REMEDIES.filter(({ kinds }) => kinds.every((kind) => CHEAP.includes(kind)))
  const pairs = cheap.flatMap((dearer, j) =>
    cheap.slice(0, j).flatMap((cheaper) => pairOf(cheaper, dearer, question, answer)),
  )
  return pairs
    .filter((remedy) => remedy.steps.some(useful) && keepsWishes(question, remedy))
    .slice(0, MOST_PAIRS)
}

/** The first proposal of each maker, the second one made upon the first one's question. */
function pairOf(
  first: RemedyMaker,
  second: RemedyMaker,
  question: CheckQuestion,
  answer: CheckAnswer,
): readonly Remedy[] {
  const [one] = first.propose(question, answer)
  if (!one) return []
  const [two] = second.propose(one.question, answer)
  return two ? [{ steps: [...one.steps, ...two.steps], question: two.question }] : []
}
