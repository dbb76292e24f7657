import type { LayPlacement } from './lay.ts'
import type { LayPiece, LayProblem } from './lay-problem.ts'
import { translateProblem } from './translate.ts'
import { liesThere, placementsFrom } from './warm-start.ts'

/** Ids of the pieces that may sit on a finished edge and need not. */
export function wishesOf({ pieces }: LayProblem): readonly string[] {
  return pieces.filter(({ sit }) => sit && !sit.must).map(({ id }) => id)
}

/** The problem with these wishes as musts. */
export function insisting(problem: LayProblem, wishes: readonly string[]): LayProblem {
  const insisted = (piece: LayPiece): LayPiece =>
    piece.sit && wishes.includes(piece.id) ? { ...piece, sit: { ...piece.sit, must: true } } : piece
  return { ...problem, pieces: problem.pieces.map(insisted) }
}

/** The wishes that a lay grants: every copy of the piece lies on a finished edge. */
export function wishesHeld(problem: LayProblem, lay: readonly LayPlacement[]): readonly string[] {
  const wishes = wishesOf(problem)
  if (wishes.length === 0) return []
  const translation = translateProblem(insisting(problem, wishes))
  const placements = placementsFrom(translation, lay)
  const sits = (wish: string) => {
    const own = placements.filter(({ item }) => translation.sources[item]?.piece.id === wish)
    return own.length > 0 && own.every((placement) => liesThere(translation, placement))
  }
  return wishes.filter(sits)
}

/** The problem with every wish as a must that the lay grants. */
export function insistingOnHeld(problem: LayProblem, lay: readonly LayPlacement[]): LayProblem {
  return insisting(problem, wishesHeld(problem, lay))
}
