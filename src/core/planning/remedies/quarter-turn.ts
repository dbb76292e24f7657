import { turnsOn } from '../../cloth/index.ts'
import type { PatternPiece } from '../../patterns/pattern.ts'
import type { CheckQuestion } from '../check.ts'
import { askedPieces, withPieces } from './change.ts'
import { lyingAt } from './lying.ts'
import type { RemedyMaker } from './remedy.ts'

/** Lets pieces lie crosswise where the cloth stretches enough that way too and has no pile against it. */
export const quarterTurn: RemedyMaker = {
  kinds: ['quarter-turn'],
  propose(question) {
    const pieces = askedPieces(question)
      .filter(({ piece }) => piece.grain === 'along' && mayLieCrosswise(piece, question))
      .map(({ piece }) => piece.id)
    if (pieces.length === 0) return []
    const changed = withPieces(question, pieces, (piece) => ({ ...piece, grain: 'either' }))
    return [{ steps: [{ kind: 'quarter-turn', pieces }], question: changed }]
  },
  asLaid(step, { lay }) {
    if (step.kind !== 'quarter-turn') return step
    return { ...step, pieces: step.pieces.filter((id) => lyingAt(lay, id, [90, 270])) }
  },
}

function mayLieCrosswise(piece: PatternPiece, { garment }: CheckQuestion): boolean {
  const { stretch, surface, faces } = garment.cloth
  const rule = { ...piece, turns: [90, 270], cloth: null }
  return typeof turnsOn(rule, { stretch, surface, faces, cloth: null }) !== 'string'
}
