import type { Mm } from '../../base/units.ts'
import { polygonPerimeter } from '../../geometry/polygon.ts'
import type { Point, Polygon, Rings } from '../../geometry/types.ts'

/** Area that the polygon has at least, whatever doubles have rounded. */
export function areaAtLeast(polygon: Polygon): number {
  const { area, doubt } = areaFromFirstCorner(polygon)
  return Math.max(0, area - doubt)
}

/** Area that the polygon has at most. */
export function areaAtMost(polygon: Polygon): number {
  const { area, doubt } = areaFromFirstCorner(polygon)
  return area + doubt
}

/**
 * Shoelace formula over differences from the first corner. Each difference is off by half an ulp of the greatest
 * coordinate, each product and each sum by as much of itself; `doubt` is eight times their sum.
 */
function areaFromFirstCorner(polygon: Polygon): { area: number; doubt: number } {
  const [ox, oy] = polygon[0] as Point
  let twice = 0
  let extent = 0
  let farthest = Math.max(Math.abs(ox), Math.abs(oy))
  let [px, py] = [0, 0]
  for (const [x, y] of polygon) {
    const [dx, dy] = [x - ox, y - oy]
    twice += px * dy - dx * py
    extent = Math.max(extent, Math.abs(dx), Math.abs(dy))
    farthest = Math.max(farthest, Math.abs(x), Math.abs(y))
    px = dx
    py = dy
  }
  return {
    area: Math.abs(twice) / 2,
    doubt: 8 * polygon.length * Number.EPSILON * extent * (extent + farthest),
  }
}

/** What adding up some hundred areas may be off by, as a share. */
const SUM_NOISE = 1e-13

/** True if one sum of areas is greater than another beyond doubt. */
export function exceeds(needed: number, available: number): boolean {
  return needed > available + SUM_NOISE * (needed + available)
}

/** What the polygon library's rounding may cost or give along a boundary: 0.2 µm, twice its grid. */
const ROUNDING: Mm = 0.0002

/** What rounding may have changed in an area that the polygon library computed. */
export function areaSlack(rings: Rings): number {
  return rings.reduce((sum, ring) => sum + (polygonPerimeter(ring) + ROUNDING) * ROUNDING, 0)
}
