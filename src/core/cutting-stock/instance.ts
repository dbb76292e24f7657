import type { CuttingProblem } from './cutting.ts'

/** Needed lengths that are alike: of one length, and to be cut from the same owned ones. */
export interface Sort {
  readonly length: number
  /** Indices into the problem's needed lengths. */
  readonly members: readonly number[]
  /** By stock: may be cut from it. */
  readonly allowed: readonly boolean[]
}

/** An owned length. Stocks of one `kin` serve the same sorts. */
export interface Stock {
  readonly length: number
  /** Index into the problem's owned lengths. */
  readonly owned: number
  readonly kin: number
}

/** The problem in whole ticks, so that sums are exact, its sorts the longest first, its stocks the shortest first. */
export interface Instance {
  readonly sorts: readonly Sort[]
  readonly stocks: readonly Stock[]
  readonly scrap: number
  readonly total: number
}

/** A sixteenth of an inch is a whole number of these, and so is every tenth of a millimetre. */
export const TICKS_PER_MM = 10_000

export function instanceOf({ needed, owned, mayUse, scrap }: CuttingProblem): Instance {
  const order = owned.map((_, index) => index).sort((a, b) => ticks(owned[a]) - ticks(owned[b]) || a - b)
  const kins = new Map<string, number>()
  const stocks = order.map((index) => {
    const serves = needed.map((_, n) => ((mayUse?.(n, index) ?? true) ? '1' : '0')).join('')
    if (!kins.has(serves)) kins.set(serves, kins.size)
    return { length: ticks(owned[index]), owned: index, kin: kins.get(serves) as number }
  })
  const sorts = new Map<string, { length: number; members: number[]; allowed: readonly boolean[] }>()
  for (const [n, length] of needed.entries()) {
    const allowed = order.map((index) => mayUse?.(n, index) ?? true)
    const key = `${ticks(length)} ${allowed.map(Number).join('')}`
    const sort = sorts.get(key) ?? { length: ticks(length), members: [], allowed }
    sort.members.push(n)
    sorts.set(key, sort)
  }
  const longestFirst = [...sorts.values()].sort((a, b) => b.length - a.length)
  return {
    sorts: longestFirst,
    stocks,
    scrap: scrap * TICKS_PER_MM,
    total: longestFirst.reduce((sum, { length, members }) => sum + length * members.length, 0),
  }
}

function ticks(length: number | undefined): number {
  return Math.round((length ?? 0) * TICKS_PER_MM)
}

/** The same problem with only these stocks, by index, in their order. */
export function onStocks(instance: Instance, chosen: readonly number[]): Instance {
  return {
    ...instance,
    sorts: instance.sorts.map((sort) => ({ ...sort, allowed: chosen.map((stock) => sort.allowed[stock]!) })),
    stocks: chosen.map((stock) => instance.stocks[stock]!),
  }
}
