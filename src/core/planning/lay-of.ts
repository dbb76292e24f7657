import { brokenInvariant } from '../base/assertions.ts'
import { checkPacking, neededAreAll } from '../packing/check/check-packing.ts'
import type { CopyRef, PackingProblem, Placement } from '../packing/problem.ts'
import type { Lay } from './lay.ts'
import { type Translation, translateCopy, translatePlacement } from './translate.ts'

/** What a search made of a packing problem. */
export interface Placed {
  readonly verdict: 'fits' | 'not-found'
  readonly placements: readonly Placement[]
  readonly leftOut: readonly CopyRef[]
}

/** True if the lay keeps every rule. A lay that does not is a mistake of ours and is never shown. */
export function isTrue(packing: PackingProblem, { verdict, placements, leftOut }: Placed): boolean {
  const faults = checkPacking(packing, placements, leftOut)
  const whole = verdict !== 'fits' || neededAreAll(packing, leftOut)
  if (faults.length === 0 && whole) return true
  brokenInvariant(`the search gave a lay that is none: ${JSON.stringify(faults.slice(0, 3))}`)
  return false
}

/** In the terms of the trade. Nothing is known yet of what is to spare. */
export function layOf(translation: Translation, { verdict, placements, leftOut }: Placed): Lay {
  return {
    verdict,
    placements: placements.map((placement) => translatePlacement(translation, placement)),
    reason: null,
    leftOut: leftOut.map((ref) => translateCopy(translation, ref)),
    spare: null,
    spareIs: verdict === 'fits' ? 'at-least' : null,
    elapsedMs: 0,
  }
}

export function nothingPlaced({ items }: PackingProblem): Placed {
  const leftOut = items.flatMap(({ copies }, item) =>
    Array.from({ length: copies }, (_, copy) => ({ item, copy })),
  )
  return { verdict: 'not-found', placements: [], leftOut }
}
