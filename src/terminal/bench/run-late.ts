import { seededRandom } from '../../core/base/random.ts'
import { layProblemFor } from '../../core/planning/check-problem.ts'
import type { LayProblem } from '../../core/planning/lay-problem.ts'
import { demoQuestions } from './demo.ts'
import { quantile } from './figures.ts'
import { type Lateness, lateAnswer, lateStrip } from './late.ts'
import { plantedOfSize, plantedProblem } from './planted/planted.ts'
import { PROOF_PROBLEMS } from './proof-problems.ts'
import { puzzles } from './puzzles.ts'
import { stripCases } from './run-strips.ts'

/** How late answers come that are stopped while one thing is being worked on, milliseconds. */
export interface LateFigure {
  readonly phase: string
  readonly answers: number
  readonly p95: number
  readonly most: number
}

/** Each problem is stopped so often, at moments by chance between these, milliseconds from the start. */
const STOPS = 8
const SOONEST = 5
const LATEST = 4000

/** One in so many demo checks. */
const DEMO_EVERY = 48

const clock = () => performance.now()

/** Gives problems of all kinds too little time, and says by what was being worked on how late they came; the worst first. */
export function runLate(folder: string | undefined): readonly LateFigure[] {
  const random = seededRandom(1)
  const late: Lateness[] = []
  const someTime = () => SOONEST * (LATEST / SOONEST) ** random()
  for (const problem of lateProblems(folder))
    for (let k = 0; k < STOPS; k++) {
      const lateness = lateAnswer(problem, 1 + k, someTime(), clock)
      if (lateness) late.push(lateness)
    }
  for (const strip of folder === undefined ? [] : stripCases(folder))
    late.push(lateStrip(strip.problem, someTime(), clock))
  const phases = [...new Set(late.map(({ phase }) => phase))]
  return phases.map((phase) => figureOf(phase, late)).sort((a, b) => b.most - a.most)
}

function figureOf(phase: string, late: readonly Lateness[]): LateFigure {
  const times = late.filter((each) => each.phase === phase).map(({ ms }) => ms)
  return { phase, answers: times.length, p95: quantile(times, 0.95), most: Math.max(...times) }
}

/** Demo checks, puzzles, small proofs, and planted problems: tight, tilted, turned anyhow, large. */
function lateProblems(folder: string | undefined): readonly LayProblem[] {
  const demo = demoQuestions(true)
    .filter((_, k) => k % DEMO_EVERY === 0)
    .flatMap((question) => {
      const problem = layProblemFor(question)
      return problem.ok ? [problem.value] : []
    })
  const tight = [1, 2, 3, 4].map((seed) => plantedProblem(seed, { inset: 0.5, dropped: 0 }).problem)
  const tilted = tight.map((each) => ({ ...each, pieces: each.pieces.map((p) => ({ ...p, tilt: 5 })) }))
  const anyhow = tight.map((each) => ({
    ...each,
    pieces: each.pieces.map((p) => ({ ...p, grain: 'any' as const, surface: 'any' as const })),
  }))
  const large = [16, 32].map(
    (panels) => plantedOfSize(1, panels, 3 * panels, { inset: 3, dropped: 0 }).problem,
  )
  return [...demo, ...puzzles(folder), ...PROOF_PROBLEMS, ...tight, ...tilted, ...anyhow, ...large]
}
