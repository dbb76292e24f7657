import type { Mm } from '../../base/units.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import type { Point, Rings } from '../../geometry/types.ts'

/** Where a closed axis-parallel square lies against a set given by rings: wholly inside it, clear of it, or neither. */
export type SquareSide = 'inside' | 'outside' | 'across'

/** Which side the square with this middle and half side is of. The boundary counts as across. */
export function squareSide(rings: Rings, x: Mm, y: Mm, half: Mm): SquareSide {
  let winding = 0
  for (const ring of rings) {
    let [ax, ay] = ring[ring.length - 1] as Point
    for (const [bx, by] of ring) {
      if (segmentMeetsSquare(ax - x, ay - y, bx - x, by - y, half)) return 'across'
      if (ay <= y !== by <= y) {
        const left = (bx - ax) * (y - ay) - (x - ax) * (by - ay) > 0
        if (by > y && left) winding++
        else if (by <= y && !left) winding--
      }
      ax = bx
      ay = by
    }
  }
  return winding > 0 ? 'inside' : 'outside'
}

/** True if the segment meets the closed square of this half side round the origin: no axis and no normal parts them. */
function segmentMeetsSquare(ax: Mm, ay: Mm, bx: Mm, by: Mm, half: Mm): boolean {
  if ((ax > half && bx > half) || (ax < -half && bx < -half)) return false
  if ((ay > half && by > half) || (ay < -half && by < -half)) return false
  const dx = bx - ax
  const dy = by - ay
  return Math.abs(ax * dy - ay * dx) <= half * (Math.abs(dx) + Math.abs(dy))
}

/**
 * The sides of the squares in a row, with middles at height `y` and x = origin + i · step for i from `from` to `to`. Squares
 * must meet their neighbours (`half` is at least half of `step`): so between two edges of the rings they are all of one side,
 * and only those near an edge are looked at one by one.
 */
export function sidesOfRow(
  rings: Rings,
  y: Mm,
  half: Mm,
  origin: Mm,
  step: Mm,
  from: number,
  to: number,
): readonly SquareSide[] {
  const near = columnsNearEdges(rings, y, half, origin, step, from, to)
  const sides: SquareSide[] = []
  for (let k = 0; k <= to - from; k++) {
    const alike = k > 0 && !near[k] && !near[k - 1]
    sides.push(alike ? (sides[k - 1] as SquareSide) : squareSide(rings, origin + (from + k) * step, y, half))
  }
  return sides
}

/** Marks every square of the row that an edge may meet, and one more on either side. */
function columnsNearEdges(
  rings: Rings,
  y: Mm,
  half: Mm,
  origin: Mm,
  step: Mm,
  from: number,
  to: number,
): Uint8Array {
  const near = new Uint8Array(Math.max(0, to - from + 1))
  for (const ring of rings) {
    let a = ring[ring.length - 1] as Point
    for (const b of ring) {
      const within = withinBand(a, b, y - half, y + half)
      a = b
      if (!within) continue
      const first = Math.floor((within[0] - half - origin) / step) - 1 - from
      const last = Math.ceil((within[1] + half - origin) / step) + 1 - from
      if (last >= 0 && first < near.length) near.fill(1, Math.max(0, first), last + 1)
    }
  }
  return near
}

/** Least and greatest x of the part of an edge between two heights, or null. */
function withinBand([ax, ay]: Point, [bx, by]: Point, low: Mm, high: Mm): readonly [Mm, Mm] | null {
  if (Math.max(ay, by) < low || Math.min(ay, by) > high) return null
  if (ay === by) return [Math.min(ax, bx), Math.max(ax, bx)]
  const xAt = (y: Mm) => ax + (bx - ax) * Math.min(1, Math.max(0, (y - ay) / (by - ay)))
  const ends = [xAt(low), xAt(high)]
  return [Math.min(...ends), Math.max(...ends)]
}

/** Rows of squares of side 2 × `half`, with middles on the lattice of step `step`, that lie wholly inside the rings. */
export interface Run {
  readonly y: number
  readonly from: number
  readonly to: number
}

/** Every lattice point (i, j) · step whose square of half side `half` lies inside the rings, as runs along x. */
export function runsInside(rings: Rings, step: Mm, half: Mm): readonly Run[] {
  if (rings.length === 0) return []
  const { minX, minY, maxX, maxY } = polygonBox(rings.flat())
  const runs: Run[] = []
  for (let j = Math.ceil(minY / step); j <= Math.floor(maxY / step); j++) {
    let from: number | null = null
    const first = Math.ceil(minX / step)
    // The last one lies outside.
    const sides = sidesOfRow(rings, j * step, half, 0, step, first, Math.floor(maxX / step) + 1)
    for (const [k, side] of sides.entries()) {
      const i = first + k
      if (side === 'inside') from ??= i
      else if (from !== null) {
        runs.push({ y: j, from, to: i - 1 })
        from = null
      }
    }
  }
  return runs
}
