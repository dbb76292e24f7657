import type { Mm } from '../base/units.ts'
import type { StripNeed } from './strip-need.ts'

/** A skirt or flounce of gathered tiers, from the top down. */
export interface Tiers {
  /** Finished length of the edge that the first tier is gathered to: a waist, a hem. */
  readonly edge: Mm
  /** Flat over finished length. Heavy cloth 1.5, medium 2, light or sheer 2.5 to 3 (common practice). */
  readonly ratio: number
  /** Finished; they add up to the finished length. */
  readonly heights: readonly Mm[]
  /** Between tiers, and where strips are joined end to end. */
  readonly seam: Mm
  /** At the lower edge of the last. */
  readonly hem: Mm
}

/**
 * Each tier as a strip to cut: its flat length is the ratio times the edge above it, which is the flat length of the tier
 * above. Waist 72 cm at 1.5: 108, 162, 243 cm. Cut height = finished height + a seam above + a seam or the hem below.
 */
export function tierNeeds(
  { edge, ratio, heights, seam, hem }: Tiers,
  nameOf: (tier: number) => string,
): readonly StripNeed[] {
  return heights.map((height, k) => ({
    name: nameOf(k + 1),
    flat: edge * ratio ** (k + 1),
    endAllowance: seam,
    height: height + seam + (k === heights.length - 1 ? hem : seam),
    copies: 1,
  }))
}
