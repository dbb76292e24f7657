import type { Filling } from './filling.ts'

/** Steps that filling one stock may take; then the best found so far is taken. */
const STEPS = 5_000

/** How many of each sort, of those `left`, are worth most in the room of a stock; longer ones before shorter ones. */
export function mostIn(
  filling: Filling,
  stock: number,
  left: readonly number[],
  values: readonly number[],
): readonly number[] {
  const { sorts } = filling.instance
  const room = filling.room[stock]!
  const counts = sorts.map(() => 0)
  let best = { worth: 0, counts: [...counts] }
  let steps = 0
  const fill = (sort: number, used: number, worth: number): void => {
    if (worth > best.worth) best = { worth, counts: [...counts] }
    if (used === room || sort === sorts.length || steps++ > STEPS) return
    const { length, allowed } = sorts[sort]!
    const most = allowed[stock] ? Math.min(left[sort]!, Math.floor((room - used) / length)) : 0
    for (let count = most; count >= 0; count--) {
      counts[sort] = count
      fill(sort + 1, used + count * length, worth + count * values[sort]!)
    }
    counts[sort] = 0
  }
  fill(0, 0, 0)
  return best.counts
}
