import { choicesOfStocks } from './choices-of-stocks.ts'
import { type CuttingPlan, type CuttingProblem, type CuttingScore, compareScores } from './cutting.ts'
import { Filling } from './filling.ts'
import { firstPlans } from './first-plans.ts'
import { type Instance, instanceOf, onStocks, TICKS_PER_MM } from './instance.ts'
import { bestBelow, type Common } from './search.ts'
import { sumsOf } from './sums.ts'
import { byCorrectedValues } from './value-correction.ts'

/** Steps of the search: some tenths of a second on a phone. The lengths of a few garments need far fewer. */
export const USUAL_NODES = 100_000

/**
 * The plan of the least score (CuttingScore). Exact when `proved`; beyond the budget of `nodes` the best one found.
 * Throws a RangeError for a length that is not a number above 0.
 */
export function cutLengths(problem: CuttingProblem, nodes = USUAL_NODES): CuttingPlan {
  for (const length of [...problem.needed, ...problem.owned]) {
    if (!(length > 0 && Number.isFinite(length)))
      throw new RangeError(`cannot cut or use a length of ${length}`)
  }
  const instance = instanceOf(problem)
  const common = { sums: sumsOf(instance), nodes }
  const most = layMost(instance, common)
  const { filling, proved } = spoilLeast(instance, most, common)
  return { from: filling.assignment(), score: inMm(filling.score()), proved: proved && common.nodes >= 0 }
}

/** As much as can be laid, at whatever cost in cut stocks. */
function layMost(instance: Instance, common: Common): Filling {
  const anyEnd = { ...instance, scrap: Number.POSITIVE_INFINITY }
  const simple = firstPlans(instance).reduce(better)
  const atBest = Math.max(0, instance.total - instance.stocks.reduce((sum, { length }) => sum + length, 0))
  const start = simple.score().short > atBest ? better(simple, byCorrectedValues(instance)) : simple
  const found = bestBelow(anyEnd, { ...start.score('all'), spoilt: 0 }, common)
  return found
    ? better(
        start,
        Filling.of(
          instance,
          found,
          instance.stocks.map((_, stock) => stock),
        ),
      )
    : start
}

/** Of the plans that lay as much as `most`, the one that spoils least: choice by choice of the stocks to cut into. */
function spoilLeast(
  instance: Instance,
  most: Filling,
  common: Common,
): { filling: Filling; proved: boolean } {
  let best = most
  const choices = choicesOfStocks(instance, common.sums, most.score(), most.score())
  for (const { stocks, bound } of choices ?? []) {
    const score = best.score()
    if (common.nodes < 0 || compareScores(bound, score) >= 0) break
    const found = bestBelow(onStocks(instance, stocks), score, common)
    if (found) best = better(best, Filling.of(instance, found, stocks))
  }
  return { filling: best, proved: choices !== null }
}

function better(best: Filling, other: Filling): Filling {
  return compareScores(other.score(), best.score()) < 0 ? other : best
}

function inMm({ short, left, ...counts }: CuttingScore): CuttingScore {
  return { ...counts, short: short / TICKS_PER_MM, left: left / TICKS_PER_MM }
}
