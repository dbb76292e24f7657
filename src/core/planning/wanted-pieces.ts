import { polygonOriented } from '../geometry/index.ts'
import type { Polygon } from '../geometry/types.ts'
import type { PieceInSize } from '../patterns/pieces-of.ts'
import type { LayPiece } from './lay-problem.ts'
import { plainPiece } from './plain-piece.ts'
import { type CopyGroup, copyGroups, type WantedCopies } from './wanted-copies.ts'

/** The wanted copies of a piece as the solver takes them, a group a piece; absent: all. None when no copy is wanted. */
export function wantedPieces(inSize: PieceInSize, wanted: WantedCopies | undefined): readonly LayPiece[] {
  return copyGroups(inSize, wanted).map((group) => groupPiece(group, inSize))
}

/** One group of copies as the solver takes it. */
export function groupPiece({ id, copies, mirror, turned }: CopyGroup, inSize: PieceInSize): LayPiece {
  const outline = turned ? turnedOver(inSize.outline) : inSize.outline
  return { ...plainPiece({ ...inSize, outline }), id, count: copies.length, mirror }
}

/** Turned over, and still counter-clockwise. */
function turnedOver(outline: Polygon): Polygon {
  return [...polygonOriented(outline, { turn: 0, mirrored: true })].reverse()
}

/** Where edge k of an outline of a turned group is once it is turned over. */
export function edgeTurnedOver(k: number, { length }: Polygon): number {
  return (2 * length - 2 - k) % length
}
