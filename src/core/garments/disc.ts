import type { Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'

/** Corners of the polygon that stands for a circle: at most 2 % more radius. */
const CORNERS = 16

/** The regular polygon whose sides touch the circle from outside, counter-clockwise: it covers the whole circle. */
export function discAround([x, y]: Point, radius: Mm): Polygon {
  const reach = radius / Math.cos(Math.PI / CORNERS)
  return Array.from({ length: CORNERS }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / CORNERS
    return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)]
  })
}
