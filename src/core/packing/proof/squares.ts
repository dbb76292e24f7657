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
    for (let i = Math.ceil(minX / step); i <= Math.floor(maxX / step) + 1; i++) {
      const inside = squareSide(rings, i * step, j * step, half) === 'inside'
      if (inside) from ??= i
      else if (from !== null) {
        runs.push({ y: j, from, to: i - 1 })
        from = null
      }
    }
  }
  return runs
}
