import type { ClothRole } from '../../base/terms.ts'
import type { PieceInSize } from '../../patterns/pieces-of.ts'
import type { CheckQuestion } from '../check.ts'
import { askedPieces, cutArea, sum, withPattern } from './change.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'

/** A piece worth looking for elsewhere by itself is at most this share of all. */
const SMALL_SHARE = 1 / 3
const MOST_PIECES = 4

/**
 * Leaves a cloth role, or one small piece, to another garment: roles first, for nobody minds a lining of another cloth,
 * then pieces from the smallest. The largest role is what this garment is for and stays. Optional pieces are never asked.
 */
export const otherGarment: RemedyMaker = {
  kinds: ['other-garment'],
  propose(question) {
    const needed = askedPieces(question).filter(({ piece }) => !piece.optional)
    return [...withoutRoles(needed, question), ...withoutPieces(needed, question)]
  },
}

function withoutRoles(needed: readonly PieceInSize[], question: CheckQuestion): readonly Remedy[] {
  const roles = [...new Set(needed.map(({ piece }) => piece.role))]
  const sized = roles
    .map((role) => ({ role, pieces: needed.filter(({ piece }) => piece.role === role) }))
    .sort((a, b) => areaOf(b.pieces) - areaOf(a.pieces))
  return sized.slice(1).map(({ role, pieces }) => ({
    steps: [leftFor(pieces, role)],
    question: { ...question, roles: roles.filter((one) => one !== role) },
  }))
}

function withoutPieces(needed: readonly PieceInSize[], question: CheckQuestion): readonly Remedy[] {
  const all = areaOf(needed)
  return needed
    .filter((asked) => cutArea(asked) <= all * SMALL_SHARE && sharesItsRole(asked, needed))
    .sort((a, b) => cutArea(a) - cutArea(b))
    .slice(0, MOST_PIECES)
    .map((asked) => ({ steps: [leftFor([asked], null)], question: withoutPiece(asked, question) }))
}

/** A piece that is all of its role goes with the role. */
function sharesItsRole({ piece }: PieceInSize, needed: readonly PieceInSize[]): boolean {
  return needed.some((other) => other.piece.id !== piece.id && other.piece.role === piece.role)
}

function areaOf(pieces: readonly PieceInSize[]): number {
  return sum(pieces.map(cutArea))
}

function leftFor(pieces: readonly PieceInSize[], role: ClothRole | null) {
  return {
    kind: 'other-garment' as const,
    pieces: pieces.map(({ piece }) => piece.id),
    role,
    copies: sum(pieces.map(({ piece }) => piece.copies)),
    area: areaOf(pieces),
  }
}

function withoutPiece({ piece: { id } }: PieceInSize, question: CheckQuestion): CheckQuestion {
  const versions = question.pattern.versions.map((version) =>
    version.id === question.version
      ? { ...version, pieces: version.pieces.filter((piece) => piece !== id) }
      : version,
  )
  return withPattern(question, { versions })
}
