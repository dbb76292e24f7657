import type { Point, Polygon } from '../../geometry/types.ts'

/** Directions all round along which no ordinary edge runs, so that one corner alone is extreme. */
export const GENERIC_DIRECTIONS: readonly Point[] = Array.from({ length: 8 }, (_, k): Point => {
  const angle = (k * Math.PI) / 4 + 0.3183
  return [Math.cos(angle), Math.sin(angle)]
})

/** The corner that lies farthest in a direction, by its index. */
export function extremeCorner(polygon: Polygon, direction: number): Point {
  const [dx, dy] = GENERIC_DIRECTIONS[direction] as Point
  let best = polygon[0] as Point
  let most = Number.NEGATIVE_INFINITY
  for (const point of polygon) {
    const reach = point[0] * dx + point[1] * dy
    if (reach > most) {
      most = reach
      best = point
    }
  }
  return best
}
