import { PATTERN_LIMITS } from '../../patterns/limits.ts'
import { askedPieces, withPieces } from './change.ts'
import type { RemedyMaker } from './remedy.ts'

/** Lets pieces lie against the pile, nap or one-way print. */
export const againstPile: RemedyMaker = {
  kinds: ['against-pile'],
  propose(question) {
    if (question.garment.cloth.surface !== 'one-way') return []
    const pieces = askedPieces(question)
      .filter(({ piece }) => piece.surface === 'as-panel')
      .map(({ piece }) => piece.id)
    if (pieces.length === 0) return []
    const changed = withPieces(question, pieces, (piece) => ({ ...piece, surface: 'any' }))
    return [{ steps: [{ kind: 'against-pile', pieces }], question: changed }]
  },
  asLaid(step, { lay }) {
    if (step.kind !== 'against-pile') return step
    // Heads point up in the problem, whichever way she holds the panel.
    const against = (id: string) =>
      lay.placements.some(
        ({ piece, turn }) => piece === id && Math.min(turn, 360 - turn) > PATTERN_LIMITS.tilt,
      )
    return { ...step, pieces: step.pieces.filter(against) }
  },
}
