import type { Instance } from './instance.ts'

/** More sums than this are not listed: then a room counts as one that can be filled whole. */
const MOST_SUMS = 20_000

/**
 * Which totals the pieces of the sorts from each one on can make, for stocks of each kin: how full a room can get at best.
 * By kin, then by first sort; ascending; null: too many.
 */
export type Sums = readonly (readonly (Float64Array | null)[])[]

export function sumsOf({ sorts, stocks }: Instance): Sums {
  const kins = [...new Set(stocks.map(({ kin }) => kin))].sort((a, b) => a - b)
  return kins.map((kin) => {
    const longest = Math.max(...stocks.map((stock) => (stock.kin === kin ? stock.length : 0)))
    const serves = stocks.findIndex((stock) => stock.kin === kin)
    const byFirst: (Float64Array | null)[] = [Float64Array.of(0)]
    for (const { length, members, allowed } of sorts.toReversed()) {
      const count = allowed[serves] ? members.length : 0
      byFirst.unshift(withMore(byFirst[0] ?? null, length, count, longest))
    }
    return byFirst
  })
}

function withMore(
  sums: Float64Array | null,
  length: number,
  count: number,
  longest: number,
): Float64Array | null {
  if (sums === null) return null
  const all = new Set<number>(sums)
  for (const sum of sums) {
    for (let more = 1; more <= count && sum + more * length <= longest; more++) all.add(sum + more * length)
    if (all.size > MOST_SUMS) return null
  }
  return Float64Array.from(all).sort()
}

/** The greatest sum that is no more than `room`. */
export function fullestOf(sums: Float64Array | null | undefined, room: number): number {
  if (!sums) return room
  let [low, high] = [0, sums.length]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (sums[middle]! <= room) low = middle
    else high = middle
  }
  return sums[low] ?? 0
}
