import type { Deg } from '../base/units.ts'
import type { Orientation, Point, Polygon } from './types.ts'

/** Cosine and sine of an angle in degrees, exact at quarter turns so that grain-straight edges stay straight. */
export function cosSin(turn: Deg): readonly [number, number] {
  const quarters = turn / 90
  if (Number.isInteger(quarters)) {
    const q = ((quarters % 4) + 4) % 4
    return [q === 0 ? 1 : q === 2 ? -1 : 0, q === 1 ? 1 : q === 3 ? -1 : 0]
  }
  const radians = (turn * Math.PI) / 180
  return [Math.cos(radians), Math.sin(radians)]
}

/** The polygon held as told: (x → −x) if mirrored, then turned counter-clockwise about the origin. Order of points is kept, so mirroring reverses the winding. */
export function polygonOriented(polygon: Polygon, { turn, mirrored }: Orientation): Polygon {
  const [cos, sin] = cosSin(turn)
  return polygon.map(([x, y]): Point => {
    const px = mirrored ? -x : x
    return [px * cos - y * sin, px * sin + y * cos]
  })
}

/** The polygon moved by (dx, dy). */
export function polygonMoved(polygon: Polygon, dx: number, dy: number): Polygon {
  return polygon.map(([x, y]): Point => [x + dx, y + dy])
}
