import type { Mm } from '../../core/base/units.ts'
import type { Polygon } from '../../core/geometry/types.ts'
import { type PieceShape, seamLine, shapeFaults, steppedShape, stripCut } from '../../core/patterns/index.ts'
import type { Rectangle } from '../../core/patterns/strip.ts'
import { boxOf } from '../drawing/paths.ts'

/** Shapes that can be typed in, in the order they are offered. */
export const TYPED_FORMS = ['box', 'trapezoid', 'triangle', 'half-moon', 'circle', 'strip'] as const
export type TypedForm = (typeof TYPED_FORMS)[number]

/** Figures, mm, that give a form its look while nothing is typed yet. */
const LOOK = { across: 300, along: 220, top: 200, band: 80 } as const

/** Full and flat the same: no gathers. */
const PLAIN_RATIO = 1

/** A shape of a form with no figure typed yet: 0 stands for “not yet”. */
export function blankShape(form: TypedForm, allowance: Mm = 0): PieceShape {
  switch (form) {
    case 'trapezoid':
      return { form, top: 0, bottom: 0, height: 0, allowance }
    case 'circle':
      return { form, diameter: 0, allowance }
    case 'strip':
      return {
        form,
        edge: 0,
        ratio: PLAIN_RATIO,
        height: 0,
        folded: false,
        endAllowance: allowance,
        sideAllowance: allowance,
      }
    default:
      return { form, width: 0, height: 0, allowance }
  }
}

/** The shape in another form, its width, height and allowance taken over as far as they mean something there. */
export function reshaped(shape: PieceShape, form: TypedForm): PieceShape {
  const blank = blankShape(form, allowanceOf(shape) ?? 0)
  const { across, along } = mainFigures(shape)
  switch (blank.form) {
    case 'trapezoid':
      return { ...blank, top: across, bottom: across, height: along }
    case 'circle':
      return { ...blank, diameter: across }
    case 'strip':
      return { ...blank, edge: across, height: along }
    case 'outline':
      return blank
    default:
      return { ...blank, width: across, height: along }
  }
}

function mainFigures(shape: PieceShape): { across: Mm; along: Mm } {
  switch (shape.form) {
    case 'trapezoid':
      return { across: shape.bottom, along: shape.height }
    case 'circle':
      return { across: shape.diameter, along: shape.diameter }
    case 'strip':
      return { across: shape.edge, along: shape.height }
    case 'outline': {
      const { minX, minY, maxX, maxY } = boxOf([seamLine(shape)])
      return { across: maxX - minX, along: maxY - minY }
    }
    default:
      return { across: shape.width, along: shape.height }
  }
}

/** A length of a shape that can be typed. 0: not yet. */
export interface ShapeFigure {
  readonly id: 'width' | 'height' | 'top' | 'bottom' | 'diameter' | 'edge' | 'bandHeight'
  readonly value: Mm
  readonly with: (value: Mm) => PieceShape
}

/** What can be typed of a shape. An outline drawn point by point is made wider or taller as a whole. */
export function figuresOfShape(shape: PieceShape): readonly ShapeFigure[] {
  switch (shape.form) {
    case 'trapezoid':
      return [
        { id: 'top', value: shape.top, with: (top) => ({ ...shape, top }) },
        { id: 'bottom', value: shape.bottom, with: (bottom) => ({ ...shape, bottom }) },
        { id: 'height', value: shape.height, with: (height) => ({ ...shape, height }) },
      ]
    case 'circle':
      return [{ id: 'diameter', value: shape.diameter, with: (diameter) => ({ ...shape, diameter }) }]
    case 'strip':
      return [
        { id: 'edge', value: shape.edge, with: (edge) => ({ ...shape, edge }) },
        { id: 'bandHeight', value: shape.height, with: (height) => ({ ...shape, height }) },
      ]
    case 'outline': {
      const { across, along } = mainFigures(shape)
      const grown = (by: { across: Mm; along: Mm }) => steppedShape(shape, by)
      return [
        {
          id: 'width',
          value: across,
          with: (v) => (v > 0 ? grown({ across: v - across, along: 0 }) : shape),
        },
        { id: 'height', value: along, with: (v) => (v > 0 ? grown({ across: 0, along: v - along }) : shape) },
      ]
    }
    default:
      return [
        { id: 'width', value: shape.width, with: (width) => ({ ...shape, width }) },
        { id: 'height', value: shape.height, with: (height) => ({ ...shape, height }) },
      ]
  }
}

/** The one allowance of all edges; null when the edges differ. */
export function allowanceOf(shape: PieceShape): Mm | null {
  switch (shape.form) {
    case 'outline': {
      const first = shape.points[0]?.allowance ?? 0
      return shape.points.every(({ allowance }) => allowance === first) ? first : null
    }
    case 'strip':
      return shape.endAllowance === shape.sideAllowance ? shape.endAllowance : null
    default:
      return shape.allowance
  }
}

/** The shape with one allowance on all its edges. */
export function withAllowance(shape: PieceShape, allowance: Mm): PieceShape {
  switch (shape.form) {
    case 'outline':
      return { ...shape, points: shape.points.map((point) => ({ ...point, allowance })) }
    case 'strip':
      return { ...shape, endAllowance: allowance, sideAllowance: allowance }
    default:
      return { ...shape, allowance }
  }
}

/** The finished outline of a shape that has all its figures, else null. */
export function drawable(shape: PieceShape | undefined): Polygon | null {
  return shape && shapeFaults(shape).length === 0 ? seamLine(shape) : null
}

/**
 * Width and height of the cloth that the shape is cut from, allowances added; null where they are not plain sums, or
 * figures are missing.
 */
export function cutSize(shape: PieceShape): Rectangle | null {
  if (shapeFaults(shape).length > 0) return null
  switch (shape.form) {
    case 'box':
      return { width: shape.width + 2 * shape.allowance, height: shape.height + 2 * shape.allowance }
    case 'circle': {
      const across = shape.diameter + 2 * shape.allowance
      return { width: across, height: across }
    }
    case 'strip':
      return stripCut(shape)
    default:
      return null
  }
}

/** The shape with usual figures wherever none is typed yet, to show what is being typed. */
export function standIn(shape: PieceShape): PieceShape {
  const or = (value: Mm, usual: Mm) => (value > 0 ? value : usual)
  switch (shape.form) {
    case 'trapezoid': {
      const bottom = or(shape.bottom, shape.top > 0 ? shape.top * 1.5 : LOOK.across)
      return { ...shape, bottom, top: or(shape.top, bottom * 0.66), height: or(shape.height, bottom * 0.75) }
    }
    case 'circle':
      return { ...shape, diameter: or(shape.diameter, LOOK.across) }
    case 'strip': {
      const edge = or(shape.edge, LOOK.across)
      return { ...shape, edge, ratio: or(shape.ratio, PLAIN_RATIO), height: or(shape.height, LOOK.band) }
    }
    case 'outline':
      return shape
    default: {
      const width = or(shape.width, shape.height > 0 ? shape.height * 1.3 : LOOK.across)
      const share = shape.form === 'half-moon' ? 0.5 : LOOK.along / LOOK.across
      return { ...shape, width, height: or(shape.height, width * share) }
    }
  }
}
