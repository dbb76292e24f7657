import type { Deadline } from '../../base/deadline.ts'
import { SEPARATE } from '../config.ts'
import type { SavedSeparation, Separation } from './separation.ts'

/** How long an attempt goes on without progress. */
export interface Patience {
  readonly rounds: number
  readonly strikes: number
}

/**
 * Moves overlapping items until nothing overlaps (true), or until several rounds of moves in a row, or the time,
 * bring no lower total (false). On failure the lay is left at its lowest total.
 */
export function separate(lay: Separation, patience: Patience, deadline: Deadline): boolean {
  let best: SavedSeparation = lay.save()
  let strikes = 0
  while (strikes < patience.strikes && best.overlap > 0) {
    const before = best.overlap
    lay.restore(best)
    let idle = 0
    while (idle < patience.rounds) {
      lay.moveAll(deadline)
      const { overlap } = lay
      if (overlap === 0) return true
      if (overlap < best.overlap) {
        if (overlap < 0.98 * best.overlap) idle = 0
        best = lay.save()
      } else idle++
      if (deadline.passed()) {
        lay.restore(best)
        return false
      }
      lay.updateWeights()
    }
    strikes = best.overlap < before * (1 - SEPARATE.progress) ? 0 : strikes + 1
  }
  lay.restore(best)
  return best.overlap === 0
}
