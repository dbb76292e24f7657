import type { Mm } from '../base/units.ts'
import type { Polygon } from '../geometry/types.ts'
import { withAllowances } from './allowance.ts'
import type { OutlinePoint, PieceShape } from './pattern.ts'
import { circleOutline, halfMoonOutline, straightCorners } from './simple-shapes.ts'
import { stripCut } from './strip.ts'
import { seamRing } from './unfold.ts'

/**
 * The outline to cut along: counter-clockwise, simple, head +y, in the coordinates of the shape's seam line. Each edge of
 * the seam line is moved out by its own allowance; a piece on the fold is unfolded first and has no allowance there.
 * Curves become chords that stand off the true outline by 0 to 0.2 mm, always outside, so a piece is never understated.
 * The shape must be free of faults (shapeFaults).
 */
export function cutOutline(shape: PieceShape): Polygon {
  switch (shape.form) {
    case 'circle':
      return circleOutline(shape, shape.allowance)
    case 'half-moon':
      return halfMoonOutline(shape, shape.allowance)
    case 'strip':
      return straightCorners({ form: 'box', ...stripCut(shape), allowance: 0 }).map(([x, y]) => [
        x - shape.endAllowance,
        y - shape.sideAllowance,
      ])
    case 'outline':
      return withAllowances(seamRing(shape))
    default:
      return withAllowances(sameAllowance(straightCorners(shape), shape.allowance))
  }
}

function sameAllowance(corners: Polygon, allowance: Mm): readonly OutlinePoint[] {
  return corners.map((at) => ({ at, allowance }))
}
