import type { Mm } from '../base/units.ts'
import type { OutlinePoint, PieceShape } from './pattern.ts'

/** What an allowance is for. */
export type AllowanceUse = 'seam' | NonNullable<OutlinePoint['use']>

/** Every allowance of the shape with what it is for; simple shapes and strips have seams only. */
export function allowancesOf(
  shape: PieceShape,
): readonly { readonly width: Mm; readonly use: AllowanceUse }[] {
  switch (shape.form) {
    case 'outline':
      return shape.onFold
        ? shape.points.slice(0, -1).map((point) => allowanceOf(point))
        : shape.points.map((point) => allowanceOf(point))
    case 'strip':
      return [shape.endAllowance, shape.sideAllowance].map((width) => ({ width, use: 'seam' as const }))
    default:
      return [{ width: shape.allowance, use: 'seam' }]
  }
}

function allowanceOf({ allowance, use }: OutlinePoint): { width: Mm; use: AllowanceUse } {
  return { width: allowance, use: use ?? 'seam' }
}

/** The shape with every allowance of one use that is wider than `most` brought down to it. The seam line stays. */
export function withAllowancesAtMost(shape: PieceShape, use: AllowanceUse, most: Mm): PieceShape {
  if (shape.form === 'outline') {
    const points = shape.points.map((point) =>
      (point.use ?? 'seam') === use ? { ...point, allowance: Math.min(point.allowance, most) } : point,
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
