import type { Grain } from '../base/terms.ts'
import { inCircle, type TurnRange } from '../base/turn-range.ts'
import type { Deg } from '../base/units.ts'

const WHOLE_CIRCLE: TurnRange = { turn: 0, tilt: 180 }

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
