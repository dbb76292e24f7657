/** More sums than this are as good as any number: the question is not worth asking. */
const MOST_SUMS = 512

/**
 * Sums that subsets of the numbers can have, ascending, those nearer than `doubt` taken as one; null if there are
 * too many to be of use.
 */
export function reachableSums(numbers: readonly number[], doubt: number): number[] | null {
  let sums = [0]
  for (const number of numbers) {
    sums = merged(
      sums,
      sums.map((sum) => sum + number),
      doubt,
    )
    if (sums.length > MOST_SUMS) return null
  }
  return sums
}

/** Two ascending lists as one. */
function merged(a: readonly number[], b: readonly number[], doubt: number): number[] {
  const all: number[] = []
  let i = 0
  let j = 0
  while (i < a.length || j < b.length) {
    const next = (a[i] ?? Number.POSITIVE_INFINITY) <= (b[j] ?? Number.POSITIVE_INFINITY) ? a[i++] : b[j++]
    if (all.length === 0 || (next as number) - (all[all.length - 1] as number) > doubt)
      all.push(next as number)
  }
  return all
}

/** True if some sum lies at most `slack` below `total` (or above it, by rounding). */
export function sumsReach(sums: readonly number[], total: number, slack: number): boolean {
  return sums.some((sum) => Math.abs(sum - total) <= slack)
}
