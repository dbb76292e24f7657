import { Filling } from './filling.ts'
import type { Instance } from './instance.ts'
import { mostIn } from './most-in.ts'

/** Plans made without search, one of which the search starts from: most are the best there is already. */
export function firstPlans(instance: Instance): readonly Filling[] {
  const shortestFirst = instance.stocks.map((_, stock) => stock)
  const longestFirst = shortestFirst.toReversed()
  return [
    longestPieceFirst(instance),
    oneStockAfterAnother(instance, shortestFirst, false),
    oneStockAfterAnother(instance, longestFirst, false),
    oneStockAfterAnother(instance, longestFirst, true),
  ]
}

/** Best fit decreasing: each piece, the longest first, from the stock that it leaves least of; cut ones before whole ones. */
function longestPieceFirst(instance: Instance): Filling {
  const filling = new Filling(instance)
  for (const [sort, { members }] of instance.sorts.entries()) {
    for (let piece = 0; piece < members.length; piece++) {
      const stock = tightest(filling, sort)
      if (stock === null) break
      filling.change(sort, stock, 1)
    }
  }
  return filling
}

function tightest(filling: Filling, sort: number): number | null {
  let best: number | null = null
  const rank = (stock: number) => (filling.pieces[stock] === 0 ? 1e15 : 0) + filling.room[stock]!
  for (let stock = 0; stock < filling.room.length; stock++) {
    if (filling.fits(sort, stock) && (best === null || rank(stock) < rank(best))) best = stock
  }
  return best
}

/**
 * Fills each stock in turn as full as it goes (Gupta and Ho 1999, "minimum bin slack"); with `longestIn` always around
 * the longest piece that still fits, which leaves the small ones for later.
 */
function oneStockAfterAnother(instance: Instance, stocks: readonly number[], longestIn: boolean): Filling {
  const filling = new Filling(instance)
  const left = instance.sorts.map(({ members }) => members.length)
  const lengths = instance.sorts.map(({ length }) => length)
  for (const stock of stocks) {
    const first = longestIn ? left.findIndex((count, sort) => count > 0 && filling.fits(sort, stock)) : -1
    if (first >= 0) {
      filling.change(first, stock, 1)
      left[first]!--
    }
    for (const [sort, count] of mostIn(filling, stock, left, lengths).entries()) {
      for (let piece = 0; piece < count; piece++) filling.change(sort, stock, 1)
      left[sort]! -= count
    }
  }
  return filling
}
