import type { Mm, Percent } from '../base/units.ts'

/**
 * Stretch that a garment girth needs to reach a body girth: 90 cm over 81 cm is 11.1 %, not 10 %; 0 when it is wide
 * enough unstretched. By the definition of stretch: (stretched − relaxed) / relaxed × 100.
 */
export function neededStretch(body: Mm, garment: Mm): Percent {
  return Math.max(0, (100 * (body - garment)) / garment)
}

/** Radius of the waist seam of a skirt cut from `share` of a circle (1 full, 0.5 half): waist / (2 π share), by definition. */
export function circleSkirtRadius(waist: Mm, share: number): Mm {
  return waist / (2 * Math.PI * share)
}
