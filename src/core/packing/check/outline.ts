import type { Mm } from '../../base/units.ts'
import type { Orientation, Point, Polygon } from '../../geometry/types.ts'

/** Flat coordinates x0, y0, x1, y1, … of a closed outline, and its bounds. The checker's own form of a polygon. */
export interface Outline {
  readonly xy: Float64Array
  readonly minX: Mm
  readonly minY: Mm
  readonly maxX: Mm
  readonly maxY: Mm
}

/** The outline as it lies: turned over first (x → −x) if mirrored, turned counter-clockwise, then moved. */
export function laidOutline(
  polygon: Polygon,
  { turn, mirrored, x, y }: Orientation & { readonly x: Mm; readonly y: Mm },
): Outline {
  // Quarter turns are taken exactly: Math.cos of a right angle is not 0.
  const quarter = turn % 90 === 0
  const radians = (turn / 180) * Math.PI
  const cos = quarter ? Math.round(Math.cos(radians)) : Math.cos(radians)
  const sin = quarter ? Math.round(Math.sin(radians)) : Math.sin(radians)
  return outlineOf(
    polygon.map(([px, py]): Point => {
      const sx = mirrored ? -px : px
      return [x + sx * cos - py * sin, y + sx * sin + py * cos]
    }),
  )
}

/** A polygon in the checker's form. */
export function outlineOf(points: Polygon): Outline {
  const xy = new Float64Array(points.length * 2)
  let [minX, minY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  let [maxX, maxY] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  points.forEach(([x, y], i) => {
    xy[2 * i] = x
    xy[2 * i + 1] = y
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  })
  return { xy, minX, minY, maxX, maxY }
}

/** True if the bounds of the two come within `reach` of each other. */
export function boundsNear(a: Outline, b: Outline, reach: Mm): boolean {
  return (
    a.minX - reach <= b.maxX &&
    b.minX - reach <= a.maxX &&
    a.minY - reach <= b.maxY &&
    b.minY - reach <= a.maxY
  )
}

/** True if (x, y) is inside, by the winding number; on the boundary the answer is unspecified. */
export function outlineHolds({ xy }: Outline, x: number, y: number): boolean {
  let winding = 0
  let ax = xy[xy.length - 2] as number
  let ay = xy[xy.length - 1] as number
  for (let i = 0; i < xy.length; i += 2) {
    const bx = xy[i] as number
    const by = xy[i + 1] as number
    if (ay <= y !== by <= y) {
      const left = (bx - ax) * (y - ay) - (x - ax) * (by - ay) > 0
      if (by > y && left) winding++
      else if (by <= y && !left) winding--
    }
    ax = bx
    ay = by
  }
  return winding !== 0
}

/** Distance from (x, y) to the boundary. */
export function outlineDistance({ xy }: Outline, x: number, y: number): Mm {
  let least = Number.POSITIVE_INFINITY
  let ax = xy[xy.length - 2] as number
  let ay = xy[xy.length - 1] as number
  for (let i = 0; i < xy.length; i += 2) {
    const bx = xy[i] as number
    const by = xy[i + 1] as number
    const dx = bx - ax
    const dy = by - ay
    const length2 = dx * dx + dy * dy
    const along = length2 === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / length2
    const t = Math.max(0, Math.min(1, along))
    const gapX = ax + t * dx - x
    const gapY = ay + t * dy - y
    least = Math.min(least, gapX * gapX + gapY * gapY)
    ax = bx
    ay = by
  }
  return Math.sqrt(least)
}
