import { cannotBeat } from './bound.ts'
import { type CuttingScore, compareScores } from './cutting.ts'
import { Filling } from './filling.ts'
import type { Instance } from './instance.ts'
import type { Sums } from './sums.ts'

/** What several searches of one problem share. */
export interface Common {
  /** Of the whole problem. */
  readonly sums: Sums
  /** Steps that may still be taken, all together; below 0: a search was cut off. */
  nodes: number
}

/**
 * The best filling that scores less than `limit` when every stock of the instance counts as cut into, or null.
 * Depth-first branch and bound over the pieces, the longest first: each goes into a stock or is given up. Alike pieces
 * take stocks in ascending order, and of stocks in the same state only the first is tried, so that no two branches are
 * the same plan by other names. Nothing better exists unless the budget has run out.
 */
export function bestBelow(instance: Instance, limit: CuttingScore, common: Common): Filling | null {
  const search = new Search(instance, limit, common)
  search.decide(0, 0, 0, { total: instance.total, short: 0, shortCount: 0 })
  return search.best
}

interface Undecided {
  readonly total: number
  readonly short: number
  readonly shortCount: number
}

class Search {
  best: Filling | null = null
  readonly #filling: Filling
  readonly #common: Common
  #limit: CuttingScore

  constructor(instance: Instance, limit: CuttingScore, common: Common) {
    this.#filling = new Filling(instance)
    this.#limit = limit
    this.#common = common
  }

  /** Decides piece `piece` of a sort and all after it; `least` is the first stock that this piece may take. */
  decide(sort: number, piece: number, least: number, rest: Undecided): void {
    if (--this.#common.nodes < 0) return
    const { sorts } = this.#filling.instance
    if (sort === sorts.length) this.#take()
    else if (piece === sorts[sort]!.members.length) this.decide(sort + 1, 0, 0, rest)
    else this.#place(sort, piece, least, rest)
  }

  #place(sort: number, piece: number, least: number, rest: Undecided): void {
    const { sorts } = this.#filling.instance
    if (cannotBeat(this.#filling, this.#common.sums, { ...rest, from: sort }, this.#limit)) return
    const { length } = sorts[sort]!
    const total = rest.total - length
    for (const stock of this.#choices(sort, least)) {
      this.#filling.change(sort, stock, 1)
      this.decide(sort, piece + 1, stock, { ...rest, total })
      this.#filling.change(sort, stock, -1)
    }
    // Of alike pieces the last ones are given up, so once one is given up all after it are.
    const given = sorts[sort]!.members.length - piece
    this.decide(sort + 1, 0, 0, {
      total: rest.total - given * length,
      short: rest.short + given * length,
      shortCount: rest.shortCount + given,
    })
  }

  #take(): void {
    const score = this.#filling.score('all')
    if (compareScores(score, this.#limit) >= 0) return
    this.best = this.#filling.copy()
    this.#limit = score
  }

  /** Stocks to try for a piece of the sort, the fullest first. */
  #choices(sort: number, least: number): readonly number[] {
    const { room, instance } = this.#filling
    const states = new Set<string>()
    const choices: number[] = []
    for (let stock = least; stock < room.length; stock++) {
      const state = `${room[stock]} ${instance.stocks[stock]!.kin}`
      if (!this.#filling.fits(sort, stock) || states.has(state)) continue
      states.add(state)
      choices.push(stock)
    }
    return choices.sort((a, b) => room[a]! - room[b]!)
  }
}
