import type { Mm } from '../../core/base/units.ts'
import type { Point, Polygon } from '../../core/geometry/types.ts'
import { openPath } from './paths.ts'

/** SVG path data of the head of an arrow at a line's end. */
export function arrowHead(line: Polygon, size: Mm): string {
  const [before, tip] = [line.at(-2), line.at(-1)] as [Point, Point]
  const [back, away] = [towards(tip, before, size), [before[1] - tip[1], tip[0] - before[0]]] as const
  const share = (size * 0.6) / (Math.hypot(...away) || 1)
  const [dx, dy] = [away[0] * share, away[1] * share]
  return openPath([[back[0] + dx, back[1] + dy], tip, [back[0] - dx, back[1] - dy]])
}

/** A point so far from one towards another. */
export function towards([x, y]: Point, [toX, toY]: Point, distance: Mm): Point {
  const length = Math.hypot(toX - x, toY - y) || 1
  return [x + ((toX - x) / length) * distance, y + ((toY - y) / length) * distance]
}
