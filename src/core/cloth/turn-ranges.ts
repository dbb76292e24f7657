import type { Grain } from '../base/terms.ts'
import type { Deg } from '../base/units.ts'

/** Every turn from `turn − tilt` to `turn + tilt`, degrees; `tilt` 180 is the whole circle. `turn` is in [0, 360). */
export interface TurnRange {
  readonly turn: Deg
  readonly tilt: Deg
}

export const WHOLE_CIRCLE: TurnRange = { turn: 0, tilt: 180 }

const GRAIN_TURNS: Readonly<Record<Exclude<Grain, 'any'>, readonly Deg[]>> = {
  along: [0, 180],
  either: [0, 90, 180, 270],
  bias: [45, 135, 225, 315],
}

/** The turns a piece asks for, before the cloth has its say: its own list if it has one, else by its grain. */
export function turnsAskedFor(grain: Grain, turns: readonly Deg[] | null, tilt: Deg): readonly TurnRange[] {
  if (turns === null && grain === 'any') return [WHOLE_CIRCLE]
  const asked = turns ?? GRAIN_TURNS[grain as Exclude<Grain, 'any'>]
  return [...new Set(asked.map(inCircle))].map((turn) => ({ turn, tilt }))
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
  const off = inCircle(other.turn - range.turn + 180) - 180
  const low = Math.max(-range.tilt, off - other.tilt)
  const high = Math.min(range.tilt, off + other.tilt)
  if (low > high + ROUNDING) return null
  return { turn: inCircle(range.turn + (low + high) / 2), tilt: Math.max(0, (high - low) / 2) }
}
