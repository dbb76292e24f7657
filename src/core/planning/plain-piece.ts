import type { PieceInSize } from '../patterns/pieces-of.ts'
import type { LayPiece } from './lay-problem.ts'

/**
 * A piece as the solver takes it, for a cloth that is its own already: the one asked by role. Its copies turn alike, and with
 * those of the pieces that are worn beside it.
 */
export function plainPiece({ piece, outline }: PieceInSize): LayPiece {
  const { id, copies, mirror, grain, tilt, needs, surface, optional, turnAlike = id } = piece
  return {
    id,
    count: copies,
    outline,
    mirror,
    grain,
    turns: null,
    tilt,
    needs,
    surface,
    cloth: null,
    optional,
    turnAlike,
  }
}
