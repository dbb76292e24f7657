import type { OutlinePoint, PieceShape } from './pattern.ts'

/** True of a point that a straight hem leaves. */
export function startsStraightHem({ use, curve }: OutlinePoint): boolean {
  return use === 'hem' && !curve
}

/** Whether some hem of the shape is straight, so that it may lie on one that a garment has (own-hem.ts). Cheap, for the page. */
export function hasStraightHem(shape: PieceShape): boolean {
  return shape.form === 'outline' && shape.points.some(startsStraightHem)
}
