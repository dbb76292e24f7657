import type { Mm } from '../../base/units.ts'
import type { Orientation, Point, Polygon } from '../../geometry/types.ts'
import type { Seat, Showing } from '../problem.ts'
import { laidOutline, type Outline, outlineOf } from './outline.ts'
import { liesWithin } from './touch.ts'

/** How and where a copy lies. */
type Lie = Orientation & { readonly x: Mm; readonly y: Mm }

/** True if the edge of the laid outline, from point `edge` to the next, lies on one of the seats. */
export function sitsOnSome(outline: Outline, edge: number, seats: readonly Seat[], tolerance: Mm): boolean {
  const points = outline.xy.length / 2
  const ends = [edge, (edge + 1) % points].map(
    (k): Point => [outline.xy[2 * k] as number, outline.xy[2 * k + 1] as number],
  )
  return seats.some((seat) => ends.every((end) => distanceToSeat(end, seat) <= tolerance))
}

/** Distance from a point to the nearest point of a seat. */
function distanceToSeat([x, y]: Point, { from: [ax, ay], to: [bx, by] }: Seat): Mm {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  const share = square === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / square
  const t = Math.min(1, Math.max(0, share))
  return Math.hypot(ax + t * dx - x, ay + t * dy - y)
}

/** True if the laid outline has the spot inside it, and the spot's centroid near the point that `at` has become. */
export function showsSpot(outline: Outline, lie: Lie, { spot, at, within }: Showing, tolerance: Mm): boolean {
  // A one-point outline: its only point is where `at` has come to lie.
  const place = laidOutline([at], lie).xy
  const [cx, cy] = centreOfArea(spot)
  const off = Math.hypot((place[0] as number) - cx, (place[1] as number) - cy)
  return off <= within + tolerance && liesWithin(outlineOf(spot), outline, tolerance)
}

/** Centre of area by triangles from the first corner. */
function centreOfArea(polygon: Polygon): Point {
  const [ox, oy] = polygon[0] as Point
  let [area, mx, my] = [0, 0, 0]
  for (let k = 1; k + 1 < polygon.length; k++) {
    const [ax, ay] = polygon[k] as Point
    const [bx, by] = polygon[k + 1] as Point
    const part = (ax - ox) * (by - oy) - (bx - ox) * (ay - oy)
    area += part
    mx += (part * (ax + bx - 2 * ox)) / 3
    my += (part * (ay + by - 2 * oy)) / 3
  }
  return [ox + mx / area, oy + my / area]
}
