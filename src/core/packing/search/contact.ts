import type { Point, Polygon } from '../../geometry/types.ts'
import { BEST_FIT } from '../config.ts'

/** Numbers stored for each side: ax, ay, and its unit direction and length. */
const SIDE = 5

/** The sides of what an item may lie against, laid out for many questions. */
export class Sides {
  private readonly numbers: number[] = []

  /** Sides of a polygon moved by (x, y): of a region as they run, of an item the other way round. */
  add(polygon: Polygon, x: number, y: number, reversed: boolean): void {
    for (let i = 0; i < polygon.length; i++) {
      const from = polygon[i] as Point
      const to = polygon[(i + 1) % polygon.length] as Point
      const [ax, ay] = reversed ? to : from
      const [bx, by] = reversed ? from : to
      const length = Math.hypot(bx - ax, by - ay)
      if (length > 0) this.numbers.push(ax + x, ay + y, (bx - ax) / length, (by - ay) / length, length)
    }
  }

  /** Length of the polygon's outline, moved by (x, y), that lies along these sides in their direction. */
  contact(polygon: Polygon, x: number, y: number): number {
    let sum = 0
    for (let i = 0; i < polygon.length; i++) {
      const [px, py] = polygon[i] as Point
      const [qx, qy] = polygon[(i + 1) % polygon.length] as Point
      sum += this.along(px + x, py + y, qx - px, qy - py)
    }
    return sum
  }

  private along(px: number, py: number, dx: number, dy: number): number {
    const { numbers } = this
    const length = Math.hypot(dx, dy)
    let sum = 0
    for (let k = 0; k < numbers.length; k += SIDE) {
      const ux = numbers[k + 2] as number
      const uy = numbers[k + 3] as number
      if (ux * dx + uy * dy < length * (1 - 1e-6)) continue
      const ox = px - (numbers[k] as number)
      const oy = py - (numbers[k + 1] as number)
      if (Math.abs(ux * oy - uy * ox) > BEST_FIT.touch) continue
      const start = ux * ox + uy * oy
      const end = Math.min(start + length, numbers[k + 4] as number)
      sum += Math.max(0, end - Math.max(0, start))
    }
    return sum
  }
}
