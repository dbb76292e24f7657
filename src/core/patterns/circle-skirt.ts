import type { Mm } from '../base/units.ts'

/** Radius of the waist seam of a skirt cut from `share` of a circle (1 full, 0.5 half): waist / (2 π share), by definition. */
export function circleSkirtRadius(waist: Mm, share: number): Mm {
  return waist / (2 * Math.PI * share)
}
