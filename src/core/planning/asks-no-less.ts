import type { Garment } from '../garments/garment.ts'
import type { CheckAnswer, CheckQuestion } from './check.ts'

/**
 * True if the first question asks the same pieces in the same or a larger size, of the same cloth in a garment none of whose
 * measures is larger: what it has to spare, the second one should have too. Only the case with something smaller or larger
 * counts, never the question itself. Whether its lay does hold there is for a checker to say.
 */
export function asksNoLess(harder: CheckQuestion, question: CheckQuestion): boolean {
  const { pattern } = question
  if (harder.pattern !== pattern || rest(harder) !== rest(question)) return false
  const larger = pattern.sizes.indexOf(harder.size) - pattern.sizes.indexOf(question.size)
  const ids = new Set([...Object.keys(harder.garment.measures), ...Object.keys(question.garment.measures)])
  const more = [...ids].map((id) => (question.garment.measures[id] ?? 0) - (harder.garment.measures[id] ?? 0))
  return larger >= 0 && more.every((by) => by >= 0) && (larger > 0 || more.some((by) => by > 0))
}

/** All that has to be the same. */
function rest({ pattern: _, size: __, garment, ...asked }: CheckQuestion): string {
  const { kind, traits, opening, outline, flaws, cloth }: Garment = garment
  return JSON.stringify([asked, kind, traits, opening, outline, flaws, cloth])
}

/** Of answers to questions that ask no less, the one with most to spare; null if none fits. */
export function mostToSpare(answers: readonly CheckAnswer[]): CheckAnswer | null {
  const fitting = answers.filter(({ lay }) => lay.verdict === 'fits')
  return fitting.reduce<CheckAnswer | null>(
    (best, answer) => (best === null || (answer.lay.spare ?? 0) > (best.lay.spare ?? 0) ? answer : best),
    null,
  )
}
