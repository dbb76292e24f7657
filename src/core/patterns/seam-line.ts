import type { Point, Polygon } from '../geometry/types.ts'
import { sampledCurve } from './curves.ts'
import type { OutlinePoint, PieceShape } from './pattern.ts'
import { circleOutline, halfMoonOutline, straightCorners } from './simple-shapes.ts'
import { stripFlat } from './strip.ts'
import { seamRing } from './unfold.ts'

/**
 * The finished outline for drawing: counter-clockwise, unfolded, head +y, in the coordinates of `cutOutline`. Curves are
 * chords within 0.2 mm. The shape must be free of faults (shapeFaults).
 */
export function seamLine(shape: PieceShape): Polygon {
  switch (shape.form) {
    case 'circle':
      return circleOutline(shape, 0)
    case 'half-moon':
      return halfMoonOutline(shape, 0)
    case 'strip':
      return straightCorners({ form: 'box', ...stripFlat(shape), allowance: 0 })
    case 'outline':
      return ringPoints(seamRing(shape))
    default:
      return straightCorners(shape)
  }
}

function ringPoints(ring: readonly OutlinePoint[]): Polygon {
  return ring.flatMap(({ at, curve }, k): readonly Point[] => {
    const next = ring[(k + 1) % ring.length] as OutlinePoint
    return curve ? sampledCurve([at, ...curve, next.at], 0).points : [at]
  })
}
