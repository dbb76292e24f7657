import { turnsOn } from '../../cloth/index.ts'
import { madeAs } from '../../garments/usual-make.ts'
import type { PatternPiece } from '../../patterns/pattern.ts'
import type { CheckQuestion } from '../check.ts'
import { cutOnBias } from '../on-bias.ts'
import { askedPieces } from './change.ts'
import type { RemedyMaker } from './remedy.ts'
import { isShortOfStretch } from './short-of-stretch.ts'

/**
 * Cuts pieces on the bias that the cloth stretches too little for with the grain: wovens give most at 45 degrees (common
 * practice), knits do not gain by it. Only where the maker allows it of every piece that is short, for what hangs from a
 * shoulder must not be cut so. How much it gives there nobody has measured, so what fits is never sure.
 */
export const biasCut: RemedyMaker = {
  kinds: ['bias-cut'],
  propose(question, answer) {
    if (!isShortOfStretch(answer) || !isWoven(question)) return []
    const short = askedPieces(question)
      .map(({ piece }) => piece)
      .filter((piece) => !piece.optional && refusal(piece, question) === 'stretch')
    const mayAll = short.every((piece) => piece.biasToo && refusal(cutOnBias(piece), question) === null)
    if (short.length === 0 || !mayAll) return []
    const pieces = short.map(({ id }) => id)
    const needs = Math.max(...short.map((piece) => Math.max(piece.needs.across, piece.needs.along)))
    return [{ steps: [{ kind: 'bias-cut', pieces, needs }], question: { ...question, onBias: pieces } }]
  },
}

/** As told, or as such garments nearly always are. */
function isWoven({ garment }: CheckQuestion): boolean {
  const { makes } = madeAs(garment)
  return makes.length > 0 && !makes.includes('knit')
}

/** Why the piece may lie in no turn on the cloth, taken as measured; null: it may in some. */
function refusal(piece: PatternPiece, { garment }: CheckQuestion) {
  const { stretch, surface, faces } = garment.cloth
  const found = turnsOn({ ...piece, turns: null, cloth: null }, { stretch, surface, faces, cloth: null })
  return typeof found === 'string' ? found : null
}
