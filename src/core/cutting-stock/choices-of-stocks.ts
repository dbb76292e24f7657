import { type CuttingScore, compareScores } from './cutting.ts'
import { isSpoilt } from './filling.ts'
import type { Instance } from './instance.ts'
import { fullestOf, type Sums } from './sums.ts'

/** More choices than this are not listed. */
const MOST_CHOICES = 30_000

/** Stocks that might be the ones cut into, with what that costs at least. */
export interface StockChoice {
  /** Indices into the instance's stocks, ascending. */
  readonly stocks: readonly number[]
  readonly bound: CuttingScore
}

/**
 * Every choice of stocks to cut into that has room for all but the `least` shortage and might score less than `limit`,
 * the least bound first; null: too many. What is left is known by the choice alone: its total less what is laid.
 */
export function choicesOfStocks(
  instance: Instance,
  sums: Sums,
  least: Pick<CuttingScore, 'short' | 'shortCount'>,
  limit: CuttingScore,
): readonly StockChoice[] | null {
  const toLay = instance.total - least.short
  const fullest = instance.stocks.map(({ length, kin }) => fullestOf(sums[kin]?.[0], length))
  const after = suffixSums(fullest)
  const found: StockChoice[] = []
  let nodes = 0
  const choose = (from: number, stocks: readonly number[], length: number, usable: number): void => {
    if (nodes++ > MOST_CHOICES || usable + after[from]! < toLay) return
    const bound = { ...least, ...boundOf(instance, fullest, stocks, Math.max(0, length - toLay)) }
    if (compareScores(bound, limit) >= 0) return
    if (usable >= toLay) found.push({ stocks, bound })
    for (let next = from; next < fullest.length; next++) {
      if (fullest[next] === 0 || isTwin(instance, from, next)) continue
      choose(next + 1, [...stocks, next], length + instance.stocks[next]!.length, usable + fullest[next]!)
    }
  }
  choose(0, [], 0, 0)
  return nodes > MOST_CHOICES ? null : found.sort((a, b) => compareScores(a.bound, b.bound))
}

/** Whether a stock alike was passed over at this step: taking that one gives the same choice. */
function isTwin({ stocks }: Instance, from: number, next: number): boolean {
  const before = stocks[next - 1]
  const stock = stocks[next]
  return next > from && before?.length === stock?.length && before?.kin === stock?.kin
}

/** Stocks that nothing fills are spoilt, and so many of the longest as it takes to leave `left` altogether. */
function boundOf(
  { stocks: all, scrap }: Instance,
  fullest: readonly number[],
  stocks: readonly number[],
  left: number,
): Pick<CuttingScore, 'spoilt' | 'left'> {
  const unfilled = stocks.filter((stock) => isSpoilt(all[stock]!.length - fullest[stock]!, scrap)).length
  let [spoilt, most] = [0, stocks.length * scrap]
  while (left > 0 && most <= left && spoilt < stocks.length) {
    spoilt++
    most += all[stocks.at(-spoilt)!]!.length - scrap
  }
  return { spoilt: Math.max(unfilled, spoilt), left }
}

function suffixSums(values: readonly number[]): readonly number[] {
  const sums = [0]
  for (const value of values.toReversed()) sums.unshift(value + sums[0]!)
  return sums
}
