/** A point on the whole-number grid of the polygon library. */
export interface GridPoint {
  readonly x: number
  readonly y: number
}

/**
 * The closed path without spikes and repeated points: corners at which it turns back on itself and runs within
 * `width` grid units of where it came from, for as long as the shorter of its two sides goes. With width 0 only exact
 * retracing goes, which changes no winding number.
 */
export function withoutSpikes<P extends GridPoint>(path: readonly P[], width: number): P[] {
  const ring = [...path]
  let i = 0
  let unchanged = 0
  while (ring.length > 2 && unchanged < ring.length) {
    const at = i % ring.length
    const before = ring[(at + ring.length - 1) % ring.length] as P
    const after = ring[(at + 1) % ring.length] as P
    if (isSpike(before, ring[at] as P, after, width)) {
      ring.splice(at, 1)
      unchanged = 0
      // Its neighbours may have become a spike in turn.
      i = (at + ring.length - 1) % ring.length
    } else {
      unchanged++
      i = at + 1
    }
  }
  return ring.length > 2 ? ring : []
}

function isSpike(a: GridPoint, b: GridPoint, c: GridPoint, width: number): boolean {
  const ux = b.x - a.x
  const uy = b.y - a.y
  const vx = c.x - b.x
  const vy = c.y - b.y
  const longer = Math.max(Math.hypot(ux, uy), Math.hypot(vx, vy))
  const shorter = Math.min(Math.hypot(ux, uy), Math.hypot(vx, vy))
  if (shorter <= width) return true
  return ux * vx + uy * vy < 0 && Math.abs(ux * vy - uy * vx) <= width * longer
}
