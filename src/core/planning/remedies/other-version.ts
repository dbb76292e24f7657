import type { PieceInSize } from '../../patterns/pieces-of.ts'
import type { CheckQuestion } from '../check.ts'
import { askedPieces, cutArea, sum } from './change.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'

/** Makes another version that takes less cloth, or cloth that stretches less; the one most like this one in area first. */
export const otherVersion: RemedyMaker = {
  kinds: ['other-version'],
  propose(question) {
    const now = neededOf(question)
    return question.pattern.versions
      .filter(({ id }) => id !== question.version)
      .map(({ id }) => ({ version: id, question: { ...question, version: id } }))
      .flatMap(({ version, question: changed }): readonly (Remedy & { saved: number })[] => {
        const then = neededOf(changed)
        if (then.length === 0) return []
        const saved = areaOf(now) - areaOf(then)
        if (saved <= 0 && !stretchesLess(then, now)) return []
        return [{ steps: [{ kind: 'other-version', version, saved }], question: changed, saved }]
      })
      .sort((a, b) => Math.abs(a.saved) - Math.abs(b.saved))
      .map(({ steps, question: changed }) => ({ steps, question: changed }))
  },
}

function neededOf(question: CheckQuestion): readonly PieceInSize[] {
  return askedPieces(question).filter(({ piece }) => !piece.optional)
}

function areaOf(pieces: readonly PieceInSize[]): number {
  return sum(pieces.map(cutArea))
}

function stretchesLess(then: readonly PieceInSize[], now: readonly PieceInSize[]): boolean {
  const most = (pieces: readonly PieceInSize[], way: 'across' | 'along') =>
    Math.max(...pieces.map(({ piece }) => piece.needs[way]))
  return most(then, 'across') < most(now, 'across') || most(then, 'along') < most(now, 'along')
}
