import type { CheckAnswer, CheckQuestion } from '../check.ts'
import { CHEAP, REMEDIES } from './all.ts'
import type { Remedy, RemedyStep } from './remedy.ts'
import { usefulSteps } from './useful.ts'

/** Pairs are many and seldom wanted. */
const MOST_PAIRS = 8

/**
 * Changed questions that may have an answer where this one has none, cheapest to her first; none if it fits.
 * Those that the answer's proof rules out are left away. Nothing is claimed of the others until they are solved.
 */
export function remediesFor(question: CheckQuestion, answer: CheckAnswer): readonly Remedy[] {
  if (answer.lay.verdict === 'fits') return []
  const useful = usefulSteps(answer)
  return REMEDIES.flatMap(({ propose }) => propose(question, answer)).filter(({ steps }) =>
    steps.every(useful),
  )
}

/**
 * Two cheap changes together, the pairs of the cheapest first. One that is ruled out by itself may still be half of a pair:
 * room gained is used better by pieces that may turn. Both ruled out stay ruled out only where the proof is of area
 * or stretch, so at least one must have been of use.
 */
export function pairsFor(question: CheckQuestion, answer: CheckAnswer): readonly Remedy[] {
  if (answer.lay.verdict === 'fits') return []
  const useful = usefulSteps(answer)
  const cheap = REMEDIES.filter(({ kinds }) => kinds.every((kind) => CHEAP.includes(kind)))
  const pairs = cheap.flatMap((first, i) =>
    cheap.slice(i + 1).flatMap((second) =>
      first
        .propose(question, answer)
        .slice(0, 1)
        .flatMap((one) =>
          second
            .propose(one.question, answer)
            .slice(0, 1)
            .map((two) => together(one, two)),
        ),
    ),
  )
  return pairs.filter(({ steps }) => steps.some((step: RemedyStep) => useful(step))).slice(0, MOST_PAIRS)
}

function together(one: Remedy, two: Remedy): Remedy {
  return { steps: [...one.steps, ...two.steps], question: two.question }
}
