import { panelsKeepingHems } from '../../garments/panels-of.ts'
import { hemSaved } from '../../patterns/own-hem.ts'
import type { CheckQuestion } from '../check.ts'
import { askedPieces } from './change.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'

/** More pieces by themselves, those with the deepest hems, would take too long to solve. */
const MOST_PIECES = 3

/** Lays pieces with a straight hem onto a hem of the garment: all that can have one, and each alone. */
export const useOwnHem: RemedyMaker = {
  kinds: ['own-hem'],
  propose(question) {
    const before = question.ownHem ?? []
    if (!panelsKeepingHems(question.garment).some(({ hems }) => hems.length > 0)) return []
    const able = askedPieces(question)
      .map(({ piece: { id }, shape }) => ({ id, saved: hemSaved(shape) }))
      .filter(({ id, saved }) => saved > 0 && !before.includes(id))
      .sort((a, b) => b.saved - a.saved)
    if (able.length === 0) return []
    const single = able.length === 1 ? [] : able.slice(0, MOST_PIECES).map((one) => [one])
    return [able, ...single].map((hemmed) => onOwnHem(question, before, hemmed))
  },
}

function onOwnHem(
  question: CheckQuestion,
  before: readonly string[],
  hemmed: readonly { readonly id: string; readonly saved: number }[],
): Remedy {
  const pieces = hemmed.map(({ id }) => id)
  const saved = Math.max(...hemmed.map((one) => one.saved))
  return {
    steps: [{ kind: 'own-hem', pieces, saved }],
    question: { ...question, ownHem: [...before, ...pieces] },
  }
}
