/**
 * The greatest sets of nodes, by their indices, of which every two are linked: all that are in no other (Bron and Kerbosch
 * 1973, with Tomita's pivot). Each in ascending order. A node counts as linked to itself.
 */
export function maximalCliques(
  nodes: number,
  linked: (i: number, j: number) => boolean,
): readonly (readonly number[])[] {
  const found: (readonly number[])[] = []
  const neighbours = Array.from(
    { length: nodes },
    (_, i) => new Set(Array.from({ length: nodes }, (__, j) => j).filter((j) => j !== i && linked(i, j))),
  )
  const both = (set: ReadonlySet<number>, k: number) => new Set([...set].filter((j) => neighbours[k]?.has(j)))
  const extend = (clique: readonly number[], open: Set<number>, done: Set<number>): void => {
    if (open.size === 0 && done.size === 0) found.push([...clique].sort((a, b) => a - b))
    const pivots = [...open, ...done].map((k) => ({ k, left: both(open, k).size }))
    const pivot = pivots.sort((a, b) => b.left - a.left)[0]?.k
    for (const k of [...open]) {
      if (pivot !== undefined && neighbours[pivot]?.has(k)) continue
      extend([...clique, k], both(open, k), both(done, k))
      open.delete(k)
      done.add(k)
    }
  }
  if (nodes > 0) extend([], new Set(neighbours.keys()), new Set())
  return found
}
