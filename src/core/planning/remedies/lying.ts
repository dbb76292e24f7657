import type { Deg } from '../../base/units.ts'
import { PATTERN_LIMITS } from '../../patterns/limits.ts'
import type { Lay } from '../lay.ts'

/** Whether a copy of the piece lies at one of these turns, give or take the most that any piece may lean. */
export function lyingAt({ placements }: Lay, piece: string, turns: readonly Deg[]): boolean {
  return placements.some(
    (placement) => placement.piece === piece && turns.some((turn) => isNear(placement.turn, turn)),
  )
}

function isNear(turn: Deg, to: Deg): boolean {
  const off = Math.abs(turn - to) % 360
  return Math.min(off, 360 - off) <= PATTERN_LIMITS.tilt + 1e-6
}
