import type { Pattern, PatternPiece } from './pattern.ts'

/** The text that the piece shares with those it turns alike with. */
function groupOf({ id, turnAlike = id }: PatternPiece): string {
  return turnAlike
}

/** The pieces worn beside one, which turn alike with it on the cloth. */
export function wornBeside({ pieces }: Pattern, piece: PatternPiece): readonly PatternPiece[] {
  return pieces.filter((other) => other.id !== piece.id && groupOf(other) === groupOf(piece))
}

/** The piece worn beside another and whatever that is worn beside, or beside none. Those that it leaves stay together. */
export function withWornBeside(pattern: Pattern, id: string, beside: string | null): Pattern {
  const piece = pattern.pieces.find((each) => each.id === id)
  if (!piece) return pattern
  const left = wornBeside(pattern, piece)
  // A group is called after one of its own, which has no text then.
  const [heir] = groupOf(piece) === id ? left : []
  const parted = pattern.pieces.map((each) => {
    if (each.id === id) return inGroup(each, id)
    return heir && left.includes(each) ? inGroup(each, heir.id) : each
  })
  const joined = parted.find((each) => each.id === beside)
  const pieces = parted.map((each) => (each.id === id && joined ? inGroup(each, groupOf(joined)) : each))
  return { ...pattern, pieces }
}

function inGroup({ turnAlike: _, ...piece }: PatternPiece, group: string): PatternPiece {
  return group === piece.id ? piece : { ...piece, turnAlike: group }
}
