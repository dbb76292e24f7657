import { cpuUsage } from 'node:process'
import { deadlineAfter } from '../../core/base/deadline.ts'
import { type PackingProblem, solve, spare } from '../../core/packing/index.ts'
import { layProblemFor } from '../../core/planning/check-problem.ts'
import { translateProblem } from '../../core/planning/translate.ts'
import { demoQuestions } from './demo.ts'
import { quantile } from './figures.ts'

/** What the spare of a lay costs: processor time, milliseconds, since other work on the machine does not change it much. */
export interface SpareFigure {
  readonly lays: number
  readonly median: number
  readonly p95: number
  /** Mean of the figures found, mm: more is better. */
  readonly spare: number
}

/** Every so many of the sampled checks of the demo data. */
const EVERY = 5
const SOLVE_MS = 250
/** As a check allows it. */
const SPARE_MS = 600

const clock = () => {
  const { user, system } = cpuUsage()
  return (user + system) / 1000
}

/** The spare of every lay found for some checks of the demo data. */
export function runSpares(): SpareFigure {
  const found = demoQuestions(true)
    .filter((_, i) => i % EVERY === 0)
    .flatMap((question) => {
      const problem = layProblemFor(question)
      return problem.ok ? spareFound(translateProblem(problem.value).packing) : []
    })
  const times = found.map(({ ms }) => ms)
  const sum = found.reduce((all, { mm }) => all + mm, 0)
  return {
    lays: found.length,
    median: quantile(times, 0.5),
    p95: quantile(times, 0.95),
    spare: sum / Math.max(1, found.length),
  }
}

function spareFound(packing: PackingProblem): readonly { ms: number; mm: number }[] {
  const answer = solve(packing, { seed: 1, clock, deadline: deadlineAfter(SOLVE_MS, clock) })
  if (answer.verdict !== 'fits') return []
  const start = clock()
  const { inset } = spare(packing, answer.placements, { seed: 1, deadline: deadlineAfter(SPARE_MS, clock) })
  return [{ ms: clock() - start, mm: inset ?? 0 }]
}
