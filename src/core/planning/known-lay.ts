import { takenOver } from '../packing/taken-over.ts'
import { carriedOver } from './carried-over.ts'
import type { SolveControl } from './check.ts'
import type { Lay } from './lay.ts'
import { layOf } from './lay-of.ts'
import type { LayProblem } from './lay-problem.ts'
import { translateProblem } from './translate.ts'
import { placementsFrom } from './warm-start.ts'
import { insistingOnHeld } from './wishes.ts'

/**
 * A lay known before that is one of this question too, whatever time there is: a question is never undecided beside its own
 * lay. The lays of other questions come after the start that was asked for. null: none holds.
 */
export function knownLay(
  problem: LayProblem,
  { warmStart, known = [] }: Pick<SolveControl, 'warmStart' | 'known'>,
): Lay | null {
  const lays = [() => warmStart ?? [], ...known.map((other) => () => carriedOver(problem, other))]
  if (!warmStart && known.length === 0) return null
  for (const lay of lays) {
    const placements = lay()
    const translation = translateProblem(insistingOnHeld(problem, placements))
    const held = takenOver(translation.packing, placementsFrom(translation, placements))
    if (held) return layOf(translation, { verdict: 'fits', ...held })
  }
  return null
}
