import { sooner } from '../base/deadline.ts'
import type { SolveControl } from './check.ts'
import type { Lay } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'
import { insisting, wishesHeld, wishesOf } from './wishes.ts'

/** Share of the time for the lay that keeps every finished edge that is wished for, and for each wish tried after it. */
const FIRST_SHARE = 0.4
const LATER_SHARE = 0.15

type Answer = (problem: LayProblem, control: SolveControl) => Lay

/**
 * Wishes to sit (`must: false`) as musts: all of them first; if that is not found, none, and then one after another
 * added to those that could be had. What is refuted is refuted without any wish, so that a wish changes no verdict.
 * `answer` takes wishes for nothing.
 */
export function answerWithWishes(problem: LayProblem, control: SolveControl, answer: Answer): Lay {
  const wishes = wishesOf(problem)
  if (wishes.length === 0) return answer(problem, control)
  const whole = answer(insisting(problem, wishes), within(control, FIRST_SHARE))
  if (whole.verdict === 'fits') return whole
  let best = answer(problem, control)
  if (best.verdict !== 'fits' || wishes.length === 1) return best
  let granted = wishesHeld(problem, best.placements)
  for (const wish of wishes.filter((each) => !granted.includes(each))) {
    const tried = [...granted, wish]
    if (tried.length === wishes.length || control.deadline.passed()) break
    const warmStart = best.placements
    const lay = answer(insisting(problem, tried), { ...within(control, LATER_SHARE), warmStart })
    if (lay.verdict !== 'fits') continue
    best = lay
    granted = tried
  }
  return best
}

function within(control: SolveControl, share: number): SolveControl {
  const deadline = sooner(control.deadline, control.deadline.left() * share, control.clock)
  return { ...control, deadline }
}
