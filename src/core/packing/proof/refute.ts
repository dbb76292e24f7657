import type { Deadline } from '../../base/deadline.ts'
import { ended, endedBy, type Slices } from '../../base/slices.ts'
import type { Refutation } from '../answer.ts'
import type { PackingProblem } from '../problem.ts'
import { refuteAlone } from './alone.ts'
import { refuteByArea } from './area.ts'
import { refuteConfined } from './confined.ts'
import { refuteByCells } from './grid.ts'
import { refuteByPoints } from './points.ts'
import { refuteByReach } from './reach.ts'
import { Relaxed } from './relaxed.ts'
import { refuteTogether } from './together.ts'
import { refuteWholeSquares } from './whole-squares.ts'

/** Tilts up to this are one core; wider ranges of turns are cut. What is lost in a proof is won in time. */
const EARLY_TILT = 7.5

/**
 * The proofs that mostly end within milliseconds, the plainest first, in slices: each `next()` does a bounded amount of
 * work, some polygon operations, so that a solver can take turns with its own search in a fixed order. Done with `null`:
 * nothing more to try.
 *
 * @param withRoom Indices of items known to have a place by themselves.
 */
export function* earlyProofs(
  problem: PackingProblem,
  withRoom?: ReadonlySet<number>,
): Slices<Refutation | null> {
  return refuteByArea(problem) ?? (yield* refuteAlone(problem, withRoom)) ?? (yield* refuteWhole(problem))
}

/** Those of the early proofs that go beyond areas and single items in free places. */
export function* refuteWhole(problem: PackingProblem): Slices<Refutation | null> {
  const confined = yield* refuteConfined(problem)
  if (confined) return confined
  const relaxed = new Relaxed(problem, EARLY_TILT)
  return (yield* refuteByReach(relaxed)) ?? (yield* refuteTogether(relaxed))
}

/** All early proofs in one go. null: nothing is proved. */
export function refuteEarly(problem: PackingProblem): Refutation | null {
  return ended(earlyProofs(problem))
}

/** The proofs that search, in slices as the early ones. */
export function* lateProofs(problem: PackingProblem): Slices<Refutation | null> {
  return (
    (yield* refuteWholeSquares(problem)) ??
    (yield* refuteByPoints(problem)) ??
    (yield* refuteByCells(problem))
  )
}

/** All late proofs in one go, until the deadline. */
export function refuteLate(
  problem: PackingProblem,
  control: { readonly deadline: Deadline },
): Refutation | null {
  return endedBy(lateProofs(problem), control.deadline)
}
