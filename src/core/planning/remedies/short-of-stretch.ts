import type { CheckAnswer } from '../check.ts'
import type { RemedyKind } from './remedy.ts'

/** Kinds that may help where the cloth stretches too little. */
export const CHANGE_STRETCH: readonly RemedyKind[] = [
  'quarter-turn',
  'bias-cut',
  'larger-size',
  'against-pile',
  'other-garment',
  'other-version',
]

/** True where the cloth is proved to stretch too little, or does as measured and is let pass by the doubt. */
export function isShortOfStretch(answer: CheckAnswer): boolean {
  return answer.lay.reason?.kind === 'stretch' || hangsOnGauge(answer)
}

/** True where it fits only if the cloth stretches more than was measured. */
export function hangsOnGauge({ lay, stretch }: Pick<CheckAnswer, 'lay' | 'stretch'>): boolean {
  return lay.verdict === 'fits' && stretch?.standing === 'just-under'
}

/** True if the outcome is better than what was asked: it fits, and no longer by more stretch than was measured where that was the trouble. */
export function isSaved(asked: CheckAnswer, outcome: CheckAnswer): boolean {
  return outcome.lay.verdict === 'fits' && !(hangsOnGauge(asked) && hangsOnGauge(outcome))
}
