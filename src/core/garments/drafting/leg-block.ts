import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import type { BuiltInFlaw } from '../kind.ts'
import { hem, type PanelDraft, seam } from './draft.ts'

/** A leg laid flat: a quarter of the girth at waist and hip, half a leg's girth below. */
export interface LegFigures {
  readonly waist: Mm
  readonly hip: Mm
  readonly thigh: Mm
  readonly opening: Mm
  /** Crotch to the top at the side. */
  readonly rise: Mm
  /** How much higher the top is at the centre than at the side. */
  readonly raise: Mm
  readonly inseam: Mm
}

/** The hip lies this share of the rise above the crotch. Common practice. */
export const HIP_SHARE = 0.4

/**
 * A panel with its outseam on the left and the crotch on the right: front right or back left of the body as one looks at
 * it. Grain runs down the crease, the middle of the thigh; the leg tapers evenly to both sides of it.
 */
export function legPanel(id: string, f: LegFigures, flaws: readonly BuiltInFlaw[] = []): PanelDraft {
  const crease = f.thigh / 2
  const top = f.inseam + f.rise
  const dart = Math.max(0, f.hip - f.waist) / 2
  const left: Point = [dart, top]
  const centre: Point = [left[0] + f.waist, top + f.raise]
  const edges = [
    hem([crease + f.opening / 2, 0]),
    seam([f.thigh, f.inseam]),
    seam(centre, [centre[0], f.inseam]),
    seam(left),
    seam([0, f.inseam + f.rise * HIP_SHARE]),
    seam([0, f.inseam]),
    seam([crease - f.opening / 2, 0]),
  ]
  return { id, start: [crease - f.opening / 2, 0], edges, flaws }
}
