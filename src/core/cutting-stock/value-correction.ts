import { seededRandom } from '../base/random.ts'
import { compareScores } from './cutting.ts'
import { Filling } from './filling.ts'
import type { Instance } from './instance.ts'
import { mostIn } from './most-in.ts'

/** Plans that are made; later ones seldom lay more. */
const ROUNDS = 60
/** Longer pieces are worth a little more than their length, for they are harder to place. */
const POWER = 1.02

/**
 * Sequential value correction (Belov and Scheithauer 2007): stocks are filled one after another with what is worth most,
 * and a sort found in stocks that were filled badly is worth more in the next plan, so that it is placed while there is
 * still something to go with it. Ends early when nothing is short.
 */
export function byCorrectedValues(instance: Instance): Filling {
  const random = seededRandom(1)
  const values = instance.sorts.map(({ length }) => length ** POWER)
  let best = planBy(instance, values, random)
  for (let round = 1; round < ROUNDS && best.score().short > 0; round++) {
    const plan = planBy(instance, values, random)
    if (compareScores(plan.score(), best.score()) < 0) best = plan
  }
  return best
}

/** One plan; `values` are corrected on the way. */
function planBy(instance: Instance, values: number[], random: () => number): Filling {
  const filling = new Filling(instance)
  const left = instance.sorts.map(({ members }) => members.length)
  for (let stock = instance.stocks.length - 1; stock >= 0; stock--) {
    const counts = mostIn(filling, stock, left, values)
    for (const [sort, count] of counts.entries()) {
      for (let piece = 0; piece < count; piece++) filling.change(sort, stock, 1)
    }
    const { length } = instance.stocks[stock]!
    const paid = length / (length - filling.room[stock]!)
    for (const [sort, count] of counts.entries()) {
      if (count === 0) continue
      const { members, length: own } = instance.sorts[sort]!
      const share = count / ((1 + random()) * (members.length + left[sort]!))
      values[sort] = (1 - share) * values[sort]! + share * paid * own ** POWER
      left[sort]! -= count
    }
  }
  return filling
}
