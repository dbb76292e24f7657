import { type CuttingScore, compareScores } from './cutting.ts'
import { type Filling, isSpoilt } from './filling.ts'
import { fullestOf, type Sums } from './sums.ts'

/** What remains to be decided: pieces of the sorts from `from` on, `total` long together. */
export interface Remainder {
  readonly from: number
  readonly total: number
  /** Given up so far: to be bought. */
  readonly short: number
  readonly shortCount: number
}

/**
 * True if no completion of the filling, all of whose stocks count as cut into, scores less than `best`. Each part of the
 * score is bounded for completions that equal the best in the parts before it. In ticks.
 */
export function cannotBeat(filling: Filling, sums: Sums, rest: Remainder, best: CuttingScore): boolean {
  const { instance, room } = filling
  let [usable, spoilt, free] = [0, 0, 0]
  for (let stock = 0; stock < room.length; stock++) {
    const fullest = fullestOf(sums[instance.stocks[stock]!.kin]?.[rest.from], room[stock]!)
    const least = room[stock]! - Math.min(rest.total, fullest)
    usable += fullest
    free += room[stock]!
    if (isSpoilt(least, instance.scrap)) spoilt++
  }
  const short = rest.short + Math.max(0, rest.total - usable)
  if (short !== best.short) return short > best.short
  const shortCount = rest.shortCount + (short > rest.short ? 1 : 0)
  const left = free - (rest.total - (short - rest.short))
  return compareScores({ short, shortCount, spoilt, left }, best) >= 0
}
