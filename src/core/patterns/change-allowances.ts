import type { Mm } from '../base/units.ts'
import type { OutlinePoint, PieceShape } from './pattern.ts'

/** What an allowance is for. */
export type AllowanceUse = 'seam' | NonNullable<OutlinePoint['use']>

/** How wide an allowance is, and what for. */
export interface Allowance {
  readonly width: Mm
  readonly use: AllowanceUse
  /** It must stay as wide as it is. */
  readonly fixed: boolean
}

/** Every allowance of the shape; simple shapes and strips have seams only. */
export function allowancesOf(shape: PieceShape): readonly Allowance[] {
  switch (shape.form) {
    case 'outline':
      return shape.onFold
        ? shape.points.slice(0, -1).map((point) => allowanceOf(point))
        : shape.points.map((point) => allowanceOf(point))
    case 'strip':
      return [shape.endAllowance, shape.sideAllowance].map(plainSeam)
    default:
      return [plainSeam(shape.allowance)]
  }
}

function allowanceOf({ allowance, use, fixed }: OutlinePoint): Allowance {
  return { width: allowance, use: use ?? 'seam', fixed: fixed ?? false }
}

function plainSeam(width: Mm): Allowance {
  return { width, use: 'seam', fixed: false }
}

/** The shape with every allowance of one use that is wider than `most` brought down to it, but for fixed ones. The seam line stays. */
export function withAllowancesAtMost(shape: PieceShape, use: AllowanceUse, most: Mm): PieceShape {
  if (shape.form === 'outline') {
    const points = shape.points.map((point) =>
      !point.fixed && (point.use ?? 'seam') === use
        ? { ...point, allowance: Math.min(point.allowance, most) }
        : point,
    )
    return { ...shape, points }
  }
  if (use !== 'seam') return shape
  if (shape.form === 'strip') {
    const endAllowance = Math.min(shape.endAllowance, most)
    const sideAllowance = Math.min(shape.sideAllowance, most)
    return { ...shape, endAllowance, sideAllowance }
  }
  return { ...shape, allowance: Math.min(shape.allowance, most) }
}
