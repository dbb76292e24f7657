/** A stream of numbers in [0, 1) that depends on its seed alone. */
export type Random = () => number

/**
 * Mulberry32 (Tommy Ettinger's 32-bit generator, public domain): one multiply-xor round a number, period 2³².
 * Good enough to shuffle orders and sample positions; not for secrets.
 */
export function seededRandom(seed: number): Random {
  let state = seed | 0
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** Fisher–Yates shuffle in place; returns the same array. */
export function shuffle<T>(items: T[], random: Random): T[] {
  for (let i = items.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1))
    const held = items[i] as T
    items[i] = items[j] as T
    items[j] = held
  }
  return items
}
