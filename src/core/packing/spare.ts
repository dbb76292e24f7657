import type { Mm } from '../base/units.ts'
import { SPARE } from './config.ts'
import { InsetSearch, type SpareControl } from './inset-search.ts'
import type { PackingProblem, Placement } from './problem.ts'

export type { SpareControl }

/**
 * How far every region edge and every forbidden edge can move in with a packing of all needed copies still found, each
 * try starting from the last packing. A figure found and checked, never a promise of more; 0 if nothing more can be
 * found, or `placements` leave out needed copies. Never more than the last of `SPARE.ladder`.
 */
export function spare(problem: PackingProblem, placements: readonly Placement[], control: SpareControl): Mm {
  const search = new InsetSearch(problem, placements, control)
  const { ladder, decisive } = SPARE
  let high = ladder.at(-1) as Mm
  for (const inset of ladder) {
    if (search.packs(inset, 'as-held') || (inset <= decisive && search.packs(inset, 'as-allowed'))) continue
    high = inset
    break
  }
  while (high - search.inset > precisionAt(search.inset) && !control.deadline.passed()) {
    const inset = (search.inset + high) / 2
    if (!search.packs(inset, 'as-held')) high = inset
  }
  return search.checkedInset()
}

function precisionAt(inset: Mm): Mm {
  return inset < SPARE.decisive ? SPARE.precision : inset * SPARE.share
}

/** Whether a packing is found with every edge moved in by `inset`: a single try, starting from `placements`. */
export function hasSpare(
  problem: PackingProblem,
  placements: readonly Placement[],
  inset: Mm,
  control: SpareControl,
): boolean {
  const search = new InsetSearch(problem, placements, control)
  return (search.packs(inset, 'as-held') || search.packs(inset, 'as-allowed')) && search.checkedInset() > 0
}
