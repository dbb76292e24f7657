import type { CheckQuestion } from '../check.ts'
import { askedPieces } from './change.ts'
import type { Remedy } from './remedy.ts'

/**
 * Whether pieces that shall show a print or use the garment's own hem are still asked as they were: a remedy that cuts one
 * in two, or from elsewhere, would let the wish go without a word.
 */
export function keepsWishes({ ownHem = [], motif, ...question }: CheckQuestion, remedy: Remedy): boolean {
  const wished = motif ? [...ownHem, motif.piece] : ownHem
  const asked = (one: CheckQuestion) => askedPieces(one).map(({ piece }) => piece.id)
  const before = asked(question)
  const after = asked(remedy.question)
  return wished.every((id) => !before.includes(id) || after.includes(id))
}
