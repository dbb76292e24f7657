import type { Mm } from '../base/units.ts'
import { polygonMoved, polygonOriented } from '../geometry/index.ts'
import type { Point } from '../geometry/types.ts'
import { type CutNotch, notchesOf } from '../patterns/notches.ts'
import type { PieceShape } from '../patterns/pattern.ts'
import type { LaidPiece } from '../stash/reservation.ts'
import { fromEdge, type TapeEdge } from './tape-edges.ts'

/** A notch on the panel, in its coordinates. */
export interface SheetNotch extends Omit<CutNotch, 'onSeam'> {
  /** Square distances from the two tape edges; null without them. */
  readonly from: readonly [Mm, Mm] | null
}

/** The notches of a laid piece, in the order in which they stand round it. The shape must be the one it was cut by. */
export function sheetNotches(
  shape: PieceShape,
  { turn, mirrored, x, y }: LaidPiece,
  edges: readonly [TapeEdge, TapeEdge] | null,
): readonly SheetNotch[] {
  return notchesOf(shape).map(({ onSeam: _, ...notch }) => {
    const [at, inward] = polygonOriented([notch.at, notch.inward], { turn, mirrored }) as [Point, Point]
    const [placed] = polygonMoved([at], x, y) as [Point]
    return {
      ...notch,
      at: placed,
      inward,
      from: edges && [fromEdge(edges[0], placed), fromEdge(edges[1], placed)],
    }
  })
}
