import type { Mm } from '../../base/units.ts'
import { allowancesOf, withAllowancesAtMost } from '../../patterns/change-allowances.ts'
import type { CheckQuestion } from '../check.ts'
import { askedPieces, withPieces, withShapes } from './change.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'

/** Sews every seam as narrowly as the pattern's maker would, but never a zip's. All of them, so that edges sewn together still match. */
export const narrowerSeams: RemedyMaker = {
  kinds: ['narrower-seams'],
  propose: (question) => narrowed(question, 'seam', question.pattern.leastAllowance),
}

/** Turns every hem up as little as the pattern's maker would. Casings keep their depth: the elastic is as wide as it is. */
export const narrowerHem: RemedyMaker = {
  kinds: ['narrower-hem'],
  propose: (question) => narrowed(question, 'hem', question.pattern.leastHem),
}

function narrowed(question: CheckQuestion, use: 'seam' | 'hem', to: Mm | undefined): readonly Remedy[] {
  if (to === undefined) return []
  const wider = askedPieces(question).flatMap(({ piece, shape }) => {
    const free = allowancesOf(shape).filter((one) => one.use === use && !one.fixed)
    const widest = Math.max(0, ...free.map(({ width }) => width))
    return widest > to ? [{ id: piece.id, widest }] : []
  })
  if (wider.length === 0) return []
  const pieces = wider.map(({ id }) => id)
  const changed = withPieces(question, pieces, (piece) =>
    withShapes(piece, (shape) => withAllowancesAtMost(shape, use, to)),
  )
  const kind = use === 'seam' ? 'narrower-seams' : 'narrower-hem'
  const from = Math.max(...wider.map(({ widest }) => widest))
  return [{ steps: [{ kind, pieces, from, to }], question: changed }]
}
