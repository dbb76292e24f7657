import type { Point } from '../geometry/types.ts'
import { type Cubic, onCurve } from './curves.ts'
import type { Notch, OutlinePoint, PieceShape } from './pattern.ts'
import { edgeFrom, seamRing } from './unfold.ts'

/** A notch where it is cut, in the coordinates of the cut outline. */
export interface CutNotch {
  /** On the cut edge, and on the seam line. */
  readonly at: Point
  readonly onSeam: Point
  /** Unit vector from there square to the seam line. */
  readonly inward: Point
  /** How many side by side. */
  readonly count: Notch['count']
  /** What the edge is called; null: it has no name. */
  readonly edge: string | null
}

/**
 * The balance marks of a shape, unfolded, each carried square from the seam line to the cut edge: notches of two pieces that
 * meet on the seam line lie over one another when their cut edges do (common practice). The shape must be free of faults
 * (shapeFaults).
 */
export function notchesOf(shape: PieceShape): readonly CutNotch[] {
  if (shape.form !== 'outline') return []
  const ring = seamRing(shape)
  return ring.flatMap((point, k) => {
    const edge = edgeFrom(point, ring[(k + 1) % ring.length] as OutlinePoint)
    return (point.notches ?? []).map((notch) => cutNotch(point, edge, notch))
  })
}

function cutNotch({ allowance, name }: OutlinePoint, edge: Cubic, { at, count }: Notch): CutNotch {
  const { point, direction } = onCurve(edge, at)
  const [ux, uy] = direction
  const onCut: Point = [point[0] + uy * allowance, point[1] - ux * allowance]
  return { at: onCut, onSeam: point, inward: [-uy, ux], count, edge: name ?? null }
}
