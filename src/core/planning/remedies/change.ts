import { polygonArea } from '../../geometry/polygon.ts'
import type { Pattern, PatternPiece, PieceShape } from '../../patterns/pattern.ts'
import { type PieceInSize, piecesOf } from '../../patterns/pieces-of.ts'
import type { CheckQuestion } from '../check.ts'

/** The pieces that the question asks of its garment, as cut. */
export function askedPieces({ pattern, version, size, roles }: CheckQuestion): readonly PieceInSize[] {
  const pieces = piecesOf(pattern, version, size)
  if (!pieces.ok) return []
  return pieces.value.filter(({ piece }) => roles === null || roles.includes(piece.role))
}

/** Area of all copies, mm². */
export function cutArea({ piece, outline }: PieceInSize): number {
  return piece.copies * polygonArea(outline)
}

export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}

/** The question with its pattern changed. */
export function withPattern(question: CheckQuestion, change: Partial<Pattern>): CheckQuestion {
  return { ...question, pattern: { ...question.pattern, ...change } }
}

/** The question with the pieces of these ids changed. */
export function withPieces(
  question: CheckQuestion,
  ids: readonly string[],
  change: (piece: PatternPiece) => PatternPiece,
): CheckQuestion {
  const pieces = question.pattern.pieces.map((piece) => (ids.includes(piece.id) ? change(piece) : piece))
  return withPattern(question, { pieces })
}

/** A piece with its shape changed in every size. */
export function withShapes(piece: PatternPiece, change: (shape: PieceShape) => PieceShape): PatternPiece {
  const shapes = Object.entries(piece.shapes).map(([size, shape]) => [size, change(shape)] as const)
  return { ...piece, shapes: Object.fromEntries(shapes) }
}
