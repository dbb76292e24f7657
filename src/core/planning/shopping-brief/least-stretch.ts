import type { Stretch } from '../../base/terms.ts'
import { turnsOn } from '../../cloth/index.ts'
import type { PatternPiece } from '../../patterns/pattern.ts'

/**
 * The least stretch of a plain cloth on which every needed piece has some turn, as the rules of grain let it be turned. Of
 * several such pairs that with the least sum, then that which asks less along, as knits give more across.
 * Lemma: raising a figure of the cloth never takes a turn away, so a least pair takes its figures from what pieces need.
 */
export function leastStretch(pieces: readonly PatternPiece[]): Stretch {
  const needed = pieces.filter(({ optional }) => !optional)
  const figures = [...new Set([0, ...needed.flatMap(({ needs }) => [needs.across, needs.along])])]
  const pairs = figures.flatMap((across) => figures.map((along) => ({ across, along })))
  const serving = pairs.filter((stretch) => needed.every((piece) => mayLie(piece, stretch)))
  serving.sort((a, b) => a.across + a.along - b.across - b.along || a.along - b.along)
  // The greatest figure both ways serves in every turn.
  return serving[0] as Stretch
}

function mayLie({ grain, tilt, needs, surface }: PatternPiece, stretch: Stretch): boolean {
  const rule = { grain, turns: null, tilt, needs, surface, cloth: null }
  return typeof turnsOn(rule, { stretch, surface: 'plain', faces: 1, cloth: null }) !== 'string'
}
