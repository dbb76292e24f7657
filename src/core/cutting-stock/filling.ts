import type { CuttingScore } from './cutting.ts'
import type { Instance } from './instance.ts'

/** How many of each sort are cut from each stock. The sums that the search needs are kept up as it changes. */
export class Filling {
  readonly instance: Instance
  /** By sort, then by stock. */
  readonly counts: readonly Int32Array[]
  /** What is left of each stock. */
  readonly room: Float64Array
  /** How many pieces are cut from each stock; 0: it stays whole. */
  readonly pieces: Int32Array
  laid = 0
  laidCount = 0

  constructor(instance: Instance) {
    this.instance = instance
    this.counts = instance.sorts.map(() => new Int32Array(instance.stocks.length))
    this.room = Float64Array.from(instance.stocks, ({ length }) => length)
    this.pieces = new Int32Array(instance.stocks.length)
  }

  fits(sort: number, stock: number): boolean {
    const { length, allowed } = this.instance.sorts[sort]!
    return allowed[stock] === true && length <= this.room[stock]!
  }

  /** Cuts one more (`by` 1), or takes one back (−1). */
  change(sort: number, stock: number, by: 1 | -1): void {
    const length = this.instance.sorts[sort]!.length * by
    this.counts[sort]![stock]! += by
    this.room[stock]! -= length
    this.pieces[stock]! += by
    this.laid += length
    this.laidCount += by
  }

  /** A filling of some of an instance's stocks, as one of the whole instance. */
  static of(instance: Instance, part: Filling, stocks: readonly number[]): Filling {
    const whole = new Filling(instance)
    for (const [sort, byStock] of part.counts.entries()) {
      for (const [k, count] of byStock.entries()) {
        for (let piece = 0; piece < count; piece++) whole.change(sort, stocks[k]!, 1)
      }
    }
    return whole
  }

  copy(): Filling {
    return Filling.of(
      this.instance,
      this,
      this.instance.stocks.map((_, stock) => stock),
    )
  }

  /** In ticks. Only stocks that something is cut from count as cut into, unless `all` are to. */
  score(cutInto: 'some' | 'all' = 'some'): CuttingScore {
    const { sorts, scrap, total } = this.instance
    let [spoilt, left] = [0, 0]
    this.room.forEach((room, stock) => {
      if (cutInto === 'some' && this.pieces[stock] === 0) return
      left += room
      if (isSpoilt(room, scrap)) spoilt++
    })
    const wanted = sorts.reduce((sum, { members }) => sum + members.length, 0)
    return { short: total - this.laid, shortCount: wanted - this.laidCount, spoilt, left }
  }

  /** The problem's own indices: for each needed length the owned one it is cut from. */
  assignment(): readonly (number | null)[] {
    const { sorts, stocks } = this.instance
    const from: (number | null)[] = []
    for (const [sort, { members }] of sorts.entries()) {
      const places = stocks.flatMap(
        ({ owned }, stock) => Array(this.counts[sort]![stock]!).fill(owned) as number[],
      )
      members.forEach((member, k) => {
        from[member] = places[k] ?? null
      })
    }
    return from
  }
}

/** Whether so much left of a cut stock means that a good length is spoilt, rather than used up. */
export function isSpoilt(left: number, scrap: number): boolean {
  return left > 0 && left >= scrap
}
