import { type Clock, type Deadline, deadlineAfter } from '../../core/base/deadline.ts'
import { packStrip, type StripProblem } from '../../core/packing/strip.ts'
import { answerLay } from '../../core/planning/answer-lay.ts'
import type { LayProblem } from '../../core/planning/lay-problem.ts'

/** How long after its time an answer came, and what was being worked on when the time was up. */
export interface Lateness {
  readonly phase: string
  readonly ms: number
}

/** What each file of the search and the proofs is at work on, the innermost of a stack first. */
const PHASES: readonly (readonly [RegExp, string])[] = [
  [/inset-search|spare/, 'spare'],
  [/jigsaw/, 'jigsaw'],
  [/best-fit/, 'best fit'],
  [/part-lay/, 'filling up a part-lay'],
  [/construct/, 'constructive lays'],
  [/attempt|separation|mover|improve/, 'pushing apart'],
  [/proofSlices/, 'proofs'],
  [/portfolio/, 'between two of them'],
  [/solve/, 'before the search'],
]

/** The answer to a problem that has `ms` for it, by the clock; null if it came before. */
export function lateAnswer(problem: LayProblem, seed: number, ms: number, clock: Clock): Lateness | null {
  const end = clock() + ms
  let phase = ''
  const passed = () => {
    if (clock() < end) return false
    phase ||= phaseOf(new Error().stack ?? '')
    return true
  }
  const deadline: Deadline = { passed, left: () => Math.max(0, end - clock()) }
  answerLay(problem, { seed, clock, deadline })
  const late = clock() - end
  return late < 0 ? null : { phase: phase || 'the last checks', ms: late }
}

/** The same of a strip, whose least length is looked for until time is up. */
export function lateStrip(problem: StripProblem, ms: number, clock: Clock): Lateness {
  const deadline = deadlineAfter(ms, clock)
  const end = clock() + ms
  packStrip(problem, { seed: 1, clock, deadline })
  return { phase: 'strips', ms: Math.max(0, clock() - end) }
}

function phaseOf(stack: string): string {
  for (const frame of stack.split('\n').slice(2)) {
    const phase = PHASES.find(([file]) => file.test(frame.replace(/\(.*\/src\//, '(')))
    if (phase) return phase[1]
  }
  return 'elsewhere'
}
