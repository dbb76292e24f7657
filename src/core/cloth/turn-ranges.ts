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

/** The part of a range that is within `tilt` of 0, or null: heads up on pile. Both tilts are below 90, or the range is the whole circle. */
export function rangeHeadUp(range: TurnRange, tilt: Deg): TurnRange | null {
  if (range.tilt >= 180) return { turn: 0, tilt }
  const centre = range.turn > 180 ? range.turn - 360 : range.turn
  const low = Math.max(centre - range.tilt, -tilt)
  const high = Math.min(centre + range.tilt, tilt)
  return low > high ? null : { turn: inCircle((low + high) / 2), tilt: (high - low) / 2 }
}

/** True if `turn` lies in the range. */
export function rangeHolds(range: TurnRange, turn: Deg): boolean {
  const off = inCircle(turn - range.turn)
  return Math.min(off, 360 - off) <= range.tilt
}
