import type { Mm } from '../base/units.ts'
import type { StripShape } from './pattern.ts'

/** Width and height of a rectangle, mm. */
export interface Rectangle {
  readonly width: Mm
  readonly height: Mm
}

/** The strip flat, between its seam lines: gathered or stretched length and what laps over, and twice the height when folded lengthwise. */
export function stripFlat(strip: StripShape): Rectangle {
  return {
    width: strip.edge * strip.ratio + (strip.lap ?? 0),
    height: strip.folded ? 2 * strip.height : strip.height,
  }
}

/** The strip as cut: cut size = finished size + the sum of the two allowances across it (by definition). */
export function stripCut(strip: StripShape): Rectangle {
  const { width, height } = stripFlat(strip)
  return { width: width + 2 * strip.endAllowance, height: height + 2 * strip.sideAllowance }
}

/**
 * How many strips of length `strip` must be joined end to end, with seams of `allowance`, for a flat length and an end
 * allowance at both ends: n strips less two allowances a join give n × strip − 2 × allowance × (n − 1), which must reach
 * flat + 2 × allowance. Infinity when a strip is all allowance.
 */
export function stripsToJoin(flat: Mm, strip: Mm, allowance: Mm): number {
  const gain = strip - 2 * allowance
  return gain > 0 ? Math.ceil(flat / gain) : Number.POSITIVE_INFINITY
}
