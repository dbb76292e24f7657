import type { Mm } from '../base/units.ts'
import type { Box, Point, Polygon } from './types.ts'

/** Signed area, mm²: positive when the polygon winds counter-clockwise (shoelace formula). */
export function polygonArea(polygon: Polygon): number {
  let twice = 0
  let previous = polygon[polygon.length - 1] as Point
  for (const point of polygon) {
    twice += previous[0] * point[1] - point[0] * previous[1]
    previous = point
  }
  return twice / 2
}

/** The same polygon wound counter-clockwise. */
export function polygonCounterClockwise(polygon: Polygon): Polygon {
  return polygonArea(polygon) < 0 ? [...polygon].reverse() : polygon
}

/** The smallest axis-parallel box round all points. The polygon must not be empty. */
export function polygonBox(polygon: Polygon): Box {
  let minX = Number.POSITIVE_INFINITY
  let minY = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  for (const [x, y] of polygon) {
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
  }
  return { minX, minY, maxX, maxY }
}

/** Length of the boundary, mm. */
export function polygonPerimeter(polygon: Polygon): Mm {
  let sum = 0
  let previous = polygon[polygon.length - 1] as Point
  for (const point of polygon) {
    sum += Math.hypot(point[0] - previous[0], point[1] - previous[1])
    previous = point
  }
  return sum
}

/** Centre of area. The polygon must have area. */
export function polygonCentroid(polygon: Polygon): Point {
  const [ox, oy] = polygon[0] as Point
  let twice = 0
  let sumX = 0
  let sumY = 0
  let [px, py] = polygon[polygon.length - 1] as Point
  for (const [x, y] of polygon) {
    const cross = (px - ox) * (y - oy) - (x - ox) * (py - oy)
    twice += cross
    sumX += cross * (px + x - 2 * ox)
    sumY += cross * (py + y - 2 * oy)
    px = x
    py = y
  }
  return [ox + sumX / (3 * twice), oy + sumY / (3 * twice)]
}

/**
 * Where a point lies: 1 inside, 0 on the boundary (exactly, in floating point), −1 outside.
 * Crossing number over half-open edges, so that a vertex is counted once.
 */
export function pointInPolygon(point: Point, polygon: Polygon): 1 | 0 | -1 {
  const [x, y] = point
  let inside = false
  let [ax, ay] = polygon[polygon.length - 1] as Point
  for (const [bx, by] of polygon) {
    const cross = (bx - ax) * (y - ay) - (x - ax) * (by - ay)
    if (
      cross === 0 &&
      x >= Math.min(ax, bx) &&
      x <= Math.max(ax, bx) &&
      y >= Math.min(ay, by) &&
      y <= Math.max(ay, by)
    )
      return 0
    if (ay > y !== by > y && cross > 0 === by > ay) inside = !inside
    ax = bx
    ay = by
  }
  return inside ? 1 : -1
}
