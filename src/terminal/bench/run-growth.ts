import { deadlineAfter } from '../../core/base/deadline.ts'
import { answerLay } from '../../core/planning/answer-lay.ts'
import { quantile } from './figures.ts'
import { plantedOfSize } from './planted/planted.ts'

/** How long planted problems of one size take on one worker. */
export interface GrowthFigure {
  readonly panels: number
  /** Pieces of the first of them. */
  readonly pieces: number
  readonly problems: number
  readonly found: number
  /** Milliseconds; what was not found counts with the time it had. */
  readonly median: number
  /** How many times the median of a quarter of the pieces; null for the smallest sizes. */
  readonly growth: number | null
}

const PANELS = [4, 8, 16, 32]
const PARTS_A_PANEL = 3.3
const ROOM = { inset: 8, dropped: 0.25 }
const SEEDS = [1, 2, 3]
const SECONDS = 40

const clock = () => performance.now()

/** Planted problems of sizes that double, each figure when it is there. */
export function* runGrowth(): Generator<GrowthFigure> {
  const medians: number[] = []
  for (const panels of PANELS) {
    const problems = SEEDS.map(
      (seed) => plantedOfSize(seed, panels, Math.round(PARTS_A_PANEL * panels), ROOM).problem,
    )
    const runs = problems.map((problem) => {
      const start = clock()
      const deadline = deadlineAfter(1000 * SECONDS, clock)
      const { verdict } = answerLay(problem, { seed: 1, clock, deadline, spareAsked: 0 })
      if (verdict === 'cannot') throw new Error(`${problem.name} were refuted`)
      return { found: verdict === 'fits', ms: clock() - start }
    })
    const median = quantile(
      runs.map(({ ms }) => ms),
      0.5,
    )
    const quarter = medians.at(-2)
    medians.push(median)
    yield {
      panels,
      pieces: problems[0]?.pieces.length ?? 0,
      problems: runs.length,
      found: runs.filter(({ found }) => found).length,
      median,
      growth: quarter === undefined ? null : median / quarter,
    }
  }
}
