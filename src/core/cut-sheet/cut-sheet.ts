import { polygonArea } from '../geometry/polygon.ts'
import type { Polygon } from '../geometry/types.ts'
import type { Pattern } from '../patterns/pattern.ts'
import type { LaidPiece } from '../stash/reservation.ts'
import { marksOf, type PieceMark } from './marks.ts'
import { type SheetNotch, sheetNotches } from './sheet-notches.ts'
import { type TapeEdge, tapeEdges } from './tape-edges.ts'
import { type TapePoint, tapePoints } from './tape-points.ts'

/** One panel on the table: what to cut from it, where, and in which order. */
export interface CutSheet {
  readonly outline: Polygon
  /** Where distances are measured from; null: the panel has no two straight edges to measure from. */
  readonly edges: readonly [TapeEdge, TapeEdge] | null
  /** In the order of cutting. */
  readonly pieces: readonly SheetPiece[]
}

export interface SheetPiece {
  readonly laid: LaidPiece
  /** null without tape edges. */
  readonly points: readonly [TapePoint, TapePoint] | null
  /** None for a piece that is not the pattern's as it stands. */
  readonly marks: readonly PieceMark[]
  /** Likewise. */
  readonly notches: readonly SheetNotch[]
}

/**
 * The sheet for the pieces of one project on one panel. Large pieces are cut first, copies of one piece together: common
 * practice, for a slip can be made good only as long as there is cloth beside it, and small pieces go anywhere.
 */
export function cutSheet(
  outline: Polygon,
  laid: readonly LaidPiece[],
  { pattern, size }: { readonly pattern: Pattern; readonly size: string },
): CutSheet {
  const edges = tapeEdges(outline)
  const shapeOf = (id: string) => pattern.pieces.find((piece) => piece.id === id)?.shapes[size]
  const pieces = inOrderOfCutting(laid).map((piece): SheetPiece => {
    const shape = shapeOf(piece.piece)
    return {
      laid: piece,
      points: edges && tapePoints(piece.outline, edges),
      marks: shape ? marksOf(shape, piece) : [],
      notches: shape ? sheetNotches(shape, piece, edges) : [],
    }
  })
  return { outline, edges, pieces }
}

function inOrderOfCutting(laid: readonly LaidPiece[]): readonly LaidPiece[] {
  const largest = new Map<string, number>()
  for (const { piece, outline } of laid)
    largest.set(piece, Math.max(largest.get(piece) ?? 0, Math.abs(polygonArea(outline))))
  const size = ({ piece }: LaidPiece) => largest.get(piece) as number
  return [...laid].sort((a, b) => size(b) - size(a) || a.piece.localeCompare(b.piece) || a.copy - b.copy)
}
