import { deadlineAfter } from '../../core/base/deadline.ts'
import { type PackingProblem, solve } from '../../core/packing/index.ts'
import { garmentProblems } from './garment-problems.ts'

/** Times to an answer over a set of problems, milliseconds. */
export interface FitFigure {
  readonly name: string
  readonly problems: number
  readonly fits: number
  readonly median: number
  readonly p95: number
}

const clock = () => performance.now()
const SECONDS = 3

/** Solves the shop checks one by one on one worker. */
export function runFits(): FitFigure {
  const problems = garmentProblems(60)
  solveTimed(problems[0] as PackingProblem)
  const runs = problems.map(solveTimed)
  const times = runs.map(({ ms }) => ms).sort((a, b) => a - b)
  return {
    name: 'shop checks',
    problems: runs.length,
    fits: runs.filter(({ fits }) => fits).length,
    median: times[Math.floor(times.length / 2)] as number,
    p95: times[Math.floor(times.length * 0.95)] as number,
  }
}

function solveTimed(problem: PackingProblem): { ms: number; fits: boolean } {
  const start = clock()
  const answer = solve(problem, { seed: 1, clock, deadline: deadlineAfter(1000 * SECONDS, clock) })
  return { ms: clock() - start, fits: answer.verdict === 'fits' }
}
