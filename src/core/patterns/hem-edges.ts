import type { OutlinePoint, PieceShape } from './pattern.ts'

/** True of a point that a straight hem leaves. */
export function startsStraightHem({ use, curve }: OutlinePoint): boolean {
  return use === 'hem' && !curve
}

/**
 * Whether some edge of the shape may lie on a hem that a garment has (own-hem.ts): a straight one that is drawn as a hem,
 * or the lower edge of a plain shape, whose maker alone knows what becomes of it. Cheap, for the page.
 */
export function hasStraightHem(shape: PieceShape): boolean {
  return shape.form === 'outline' ? shape.points.some(startsStraightHem) : hasLowerEdge(shape)
}

/** Whether a shape without drawn edges stands on a straight one: a disc has none, and what is folded lengthwise is sewn on both. */
export function hasLowerEdge(shape: PieceShape): boolean {
  if (shape.form === 'strip') return !shape.folded
  return shape.form !== 'circle' && shape.form !== 'outline'
}
