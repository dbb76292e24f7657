import type { PatternPiece } from '../patterns/pattern.ts'
import type { CheckQuestion } from './check.ts'
import type { StretchFinding } from './stretch-doubt.ts'

/**
 * The piece as it is laid on the bias. It asks no stretch there: what was measured across and along says nothing of 45 degrees,
 * where a woven gives most (common practice), so it can neither prove the piece nor refute it. That it needs some all the same is told
 * by `biasFinding`.
 */
export function cutOnBias(piece: PatternPiece): PatternPiece {
  return { ...piece, grain: 'bias', needs: { across: 0, along: 0 } }
}

/** What a lay with pieces on the bias hangs on: the one of them that needs most stretch, which nobody measured there; undefined: none is. */
export function biasFinding({ pattern, onBias = [] }: CheckQuestion): StretchFinding | undefined {
  const found = pattern.pieces
    .filter(({ id }) => onBias.includes(id))
    .map(({ id, needs }): StretchFinding => ({ standing: 'unmeasured', piece: id, needs, has: null }))
  const most = ({ needs }: StretchFinding) => Math.max(needs.across, needs.along)
  return found.sort((a, b) => most(b) - most(a))[0]
}
