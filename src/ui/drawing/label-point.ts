import { pointInPolygon, polygonBox } from '../../core/geometry/index.ts'
import type { Point, Polygon } from '../../core/geometry/types.ts'

/** Points tried in each direction. */
const GRID = 14

/** Room given up for each millimetre nearer the middle. */
const MIDDLE = 0.1

/** A point well inside an outline, and how far it is from the edge, mm: where a label has the most room. */
export function labelPoint(outline: Polygon): { readonly at: Point; readonly room: number } {
  const { minX, minY, maxX, maxY } = polygonBox(outline)
  const [midX, midY] = [(minX + maxX) / 2, (minY + maxY) / 2]
  let best = { at: [midX, midY] as Point, room: 0, score: Number.NEGATIVE_INFINITY }
  for (let i = 1; i < GRID; i++) {
    for (let j = 1; j < GRID; j++) {
      const at: Point = [minX + ((maxX - minX) * i) / GRID, minY + ((maxY - minY) * j) / GRID]
      const room = pointInPolygon(at, outline) === 1 ? toEdge(at, outline) : 0
      // Of two places with about the same room the one nearer the middle reads better.
      const score = room - Math.hypot(at[0] - midX, at[1] - midY) * MIDDLE
      if (room > 0 && score > best.score) best = { at, room, score }
    }
  }
  return best
}

function toEdge(point: Point, outline: Polygon): number {
  let least = Number.POSITIVE_INFINITY
  let from = outline.at(-1) as Point
  for (const to of outline) {
    least = Math.min(least, toSegment(point, from, to))
    from = to
  }
  return least
}

function toSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay]
  const along = dx === 0 && dy === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)
  const t = Math.min(1, Math.max(0, along))
  return Math.hypot(x - ax - t * dx, y - ay - t * dy)
}
