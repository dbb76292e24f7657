/** Squares that one copy may cover, in rising order. */
export type Slot = readonly number[]

/** A puzzle of numbered squares: each kind has so many copies, each of which must take one of its slots; no square twice. */
export interface SquarePuzzle {
  readonly squares: number
  readonly kinds: readonly { readonly copies: number; readonly slots: readonly Slot[] }[]
}

/** Slots tried between two pauses, and in all before the search is given up. */
const PAUSE = 20_000
const MOST_TRIED = 4_000_000

/**
 * Complete search in the order of squares: the first square not yet decided is the lowest one of some copy's slot,
 * or stays empty as long as there are squares to spare. `none`: there is no solution; `open`: given up.
 */
export function* solvePuzzle({ squares, kinds }: SquarePuzzle): Generator<void, 'some' | 'none' | 'open'> {
  const byFirst = kinds.map(({ slots }) => slotsByFirst(slots, squares))
  const left = kinds.map(({ copies }) => copies)
  const sizes = kinds.map(({ slots }) => slots[0]?.length ?? 0)
  if (kinds.some(({ copies, slots }) => copies > 0 && slots.length === 0)) return 'none'
  const taken = new Uint8Array(squares)
  let toPlace = left.reduce((sum, n) => sum + n, 0)
  let tried = 0

  function* fill(from: number, spare: number): Generator<void, boolean> {
    if (toPlace === 0) return true
    let square = from
    while (square < squares && taken[square]) square++
    if (square === squares) return false
    for (let kind = 0; kind < kinds.length; kind++) {
      if (left[kind] === 0) continue
      for (const slot of byFirst[kind]?.[square] ?? []) {
        if (++tried % PAUSE === 0) yield
        if (tried > MOST_TRIED) return true
        if (slot.some((s) => taken[s])) continue
        mark(slot, kind, 1)
        if (yield* fill(square + 1, spare)) return true
        mark(slot, kind, -1)
      }
    }
    if (spare === 0) return false
    return yield* fill(square + 1, spare - 1)
  }

  function mark(slot: Slot, kind: number, by: 1 | -1): void {
    for (const s of slot) taken[s] = by > 0 ? 1 : 0
    left[kind] = (left[kind] as number) - by
    toPlace -= by
  }

  const needed = kinds.reduce((sum, { copies }, kind) => sum + copies * (sizes[kind] as number), 0)
  if (needed > squares) return 'none'
  const found = yield* fill(0, squares - needed)
  if (tried > MOST_TRIED) return 'open'
  return found ? 'some' : 'none'
}

/** For each square, the slots of which it is the lowest. */
function slotsByFirst(slots: readonly Slot[], squares: number): readonly (readonly Slot[])[] {
  const distinct = new Map(slots.map((slot) => [slot.join(), slot]))
  const lists: Slot[][] = Array.from({ length: squares }, () => [])
  for (const slot of distinct.values()) lists[slot[0] as number]?.push(slot)
  return lists
}
