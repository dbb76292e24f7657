import type { Mm } from '../base/units.ts'
import { polygonBox } from '../geometry/polygon.ts'
import type { Point } from '../geometry/types.ts'
import type { OutlinePoint, OutlineShape, PieceShape } from './pattern.ts'
import { seamLine } from './seam-line.ts'
import { edgeLength } from './unfold.ts'

/** What one size adds to the finished width and height of a piece, mm; negative for a smaller size. */
export interface SizeStep {
  readonly across: Mm
  readonly along: Mm
}

/** Copies a size as it is. */
export const NO_STEP: SizeStep = { across: 0, along: 0 }

/**
 * The shape grown to the next size, allowances unchanged. A drawn outline is scaled across and along as a whole, so
 * a piece on an upright fold grows by half of `across` on each side of it; a circle grows by `across` alone.
 */
export function steppedShape(shape: PieceShape, { across, along }: SizeStep): PieceShape {
  switch (shape.form) {
    case 'box':
    case 'triangle':
    case 'half-moon':
      return { ...shape, width: shape.width + across, height: shape.height + along }
    case 'trapezoid':
      return {
        ...shape,
        top: shape.top + across,
        bottom: shape.bottom + across,
        height: shape.height + along,
      }
    case 'circle':
      return { ...shape, diameter: shape.diameter + across }
    case 'strip':
      return { ...shape, edge: shape.edge + across, height: shape.height + along }
    case 'outline':
      return steppedOutline(shape, { across, along })
  }
}

function steppedOutline(shape: OutlineShape, { across, along }: SizeStep): OutlineShape {
  const box = polygonBox(seamLine(shape))
  const wider = 1 + across / (box.maxX - box.minX)
  const taller = 1 + along / (box.maxY - box.minY)
  const scaled = ([x, y]: Point): Point => [x * wider, y * taller]
  const points = shape.points.map((point) => ({
    ...point,
    at: scaled(point.at),
    ...(point.curve && { curve: [scaled(point.curve[0]), scaled(point.curve[1])] as const }),
  }))
  const next = (list: readonly OutlinePoint[], k: number) => list[(k + 1) % list.length] as OutlinePoint
  return {
    ...shape,
    points: points.map((point, k): OutlinePoint => {
      if (!point.notches) return point
      const longer =
        edgeLength(point, next(points, k)) /
        edgeLength(shape.points[k] as OutlinePoint, next(shape.points, k))
      return { ...point, notches: point.notches.map(({ at, count }) => ({ at: at * longer, count })) }
    }),
  }
}
