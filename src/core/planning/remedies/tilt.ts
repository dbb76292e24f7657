import { askedPieces, withPieces } from './change.ts'
import type { RemedyMaker } from './remedy.ts'

/** Lets every piece that keeps to a grain lean as far as the pattern's maker would ever let it. */
export const tilt: RemedyMaker = {
  kinds: ['tilt'],
  propose(question) {
    const most = question.pattern.mostTilt ?? 0
    const straighter = askedPieces(question).filter(({ piece }) => piece.grain !== 'any' && piece.tilt < most)
    if (straighter.length === 0) return []
    const pieces = straighter.map(({ piece }) => piece.id)
    const from = Math.min(...straighter.map(({ piece }) => piece.tilt))
    const changed = withPieces(question, pieces, (piece) => ({ ...piece, tilt: most }))
    return [{ steps: [{ kind: 'tilt', pieces, from, to: most }], question: changed }]
  },
}
