import type { Deg } from './units.ts'

/** Every turn from `turn − tilt` to `turn + tilt`, degrees; `tilt` 180 is the whole circle. */
export interface TurnRange {
  readonly turn: Deg
  readonly tilt: Deg
}

/** The same angle in [0, 360). */
export function inCircle(turn: Deg): Deg {
  const rest = turn % 360
  return rest < 0 ? rest + 360 : rest + 0
}

/** Degrees by which two ranges may miss each other and still meet: sums of written degrees round. */
const ROUNDING: Deg = 1e-9

/** What two ranges share, or null; at most one of them is wider than a quarter each way, and then it is the whole circle. */
export function sharedRange(range: TurnRange, other: TurnRange): TurnRange | null {
  if (range.tilt >= 180) return other
  if (other.tilt >= 180) return range
  const off = inCircle(other.turn - range.turn + 180) - 180
  const low = Math.max(-range.tilt, off - other.tilt)
  const high = Math.min(range.tilt, off + other.tilt)
  if (low > high + ROUNDING) return null
  return { turn: inCircle(range.turn + (low + high) / 2), tilt: Math.max(0, (high - low) / 2) }
}
