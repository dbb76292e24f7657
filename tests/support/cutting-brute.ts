import type { CuttingProblem, CuttingScore } from '../../src/core/cutting-stock/index.ts'

/** The least score by trying every owned length, and none, for every needed one. For whole millimetres and small problems. */
export function leastScoreByTrial({ needed, owned, mayUse, scrap }: CuttingProblem): CuttingScore {
  const from: (number | null)[] = needed.map(() => null)
  let best: CuttingScore | null = null
  const choose = (n: number): void => {
    if (n === needed.length) {
      const score = scoreOf({ needed, owned, scrap }, from)
      if (best === null || isLess(score, best)) best = score
      return
    }
    for (const o of [null, ...owned.keys()]) {
      from[n] = o
      const used = from
        .slice(0, n + 1)
        .reduce((sum: number, each, k) => sum + (each === o ? needed[k]! : 0), 0)
      if (o === null || ((mayUse?.(n, o) ?? true) && used <= owned[o]!)) choose(n + 1)
    }
  }
  choose(0)
  return best as unknown as CuttingScore
}

/** The figures of a plan, counted from its assignment alone. Throws when an owned length is cut beyond its end. */
export function scoreOf(
  { needed, owned, scrap }: Pick<CuttingProblem, 'needed' | 'owned' | 'scrap'>,
  from: readonly (number | null)[],
): CuttingScore {
  let [short, shortCount, spoilt, left] = [0, 0, 0, 0]
  for (const [n, o] of from.entries()) {
    if (o !== null) continue
    short += needed[n]!
    shortCount++
  }
  for (const [o, length] of owned.entries()) {
    if (!from.includes(o)) continue
    const rest = from.reduce((sum: number, each, n) => (each === o ? sum - needed[n]! : sum), length)
    if (rest < 0) throw new Error(`owned length ${o} is cut ${-rest} beyond its end`)
    left += rest
    if (rest > 0 && rest >= scrap) spoilt++
  }
  return { short, shortCount, spoilt, left }
}

function isLess(a: CuttingScore, b: CuttingScore): boolean {
  return (a.short - b.short || a.shortCount - b.shortCount || a.spoilt - b.spoilt || a.left - b.left) < 0
}
