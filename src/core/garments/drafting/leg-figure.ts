import type { Mm } from '../../base/units.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import type { Figure } from '../kind.ts'
import { seam } from './draft.ts'
import { HIP_SHARE, type LegFigures } from './leg-block.ts'
import { acrossTape, mirrored, polyline } from './lines.ts'

/** How far a leg's inner hem stands from the middle, as a share of the inseam, so that the inseams can be told apart. */
const SPREAD = 0.11

/** Trousers or leggings from the front, both legs in one outline. */
export function trouserShape(leg: LegFigures): Polygon {
  const inner = hemInner(leg)
  const half: readonly Point[] = [[0, leg.inseam], [inner, 0], [inner + leg.opening, 0], ...side(leg)]
  return [...half, ...mirrored(half).slice(0, -1)]
}

/** Each tape where it is read: girths across, the rise up the centre, the inseam down the left leg. */
export function legTapes(leg: LegFigures): Figure['tapes'] {
  const inner = hemInner(leg)
  const top = leg.inseam + leg.rise
  return [
    acrossTape('waist-width', 2 * leg.waist, top),
    acrossTape('hip-width', 2 * leg.hip, hipLevel(leg)),
    { measure: 'thigh-width', from: [0, leg.inseam], to: [leg.thigh, leg.inseam] },
    { measure: 'front-rise', from: [0, leg.inseam], to: [0, top] },
    { measure: 'inseam', from: [0, leg.inseam], to: [-inner, 0] },
    { measure: 'leg-opening', from: [inner, 0], to: [inner + leg.opening, 0] },
  ]
}

/** From the thigh up to the waist in one curve that passes the hip where it is measured. */
function side(leg: LegFigures): readonly Point[] {
  const thigh: Point = [leg.thigh, leg.inseam]
  const waist: Point = [leg.waist, leg.inseam + leg.rise]
  const t = HIP_SHARE
  const control = (hip: Mm, from: Mm, to: Mm): Mm =>
    (hip - (1 - t) ** 2 * from - t ** 2 * to) / (2 * t * (1 - t))
  const bend: Point = [control(leg.hip, thigh[0], waist[0]), control(hipLevel(leg), thigh[1], waist[1])]
  return polyline(thigh, [seam(waist, bend)])
}

function hemInner(leg: LegFigures): Mm {
  return leg.inseam * SPREAD
}

function hipLevel(leg: LegFigures): Mm {
  return leg.inseam + leg.rise * HIP_SHARE
}
