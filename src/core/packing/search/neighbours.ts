import { type FlatRings, flatNearest, type Nearest } from '../engine/flat-rings.ts'
import type { NoFit } from '../engine/no-fit-table.ts'

/** A straight line n · p = offset that the moved item has to reach or not to cross; n has length 1. */
export interface ContactLine {
  nx: number
  ny: number
  offset: number
}

/**
 * What one item in one shape runs into: the no-fit polygons of the items around it, each at its place and with
 * its weight. Filled again for every item that moves; the search asks it for thousands of positions.
 */
export class Neighbours {
  private count = 0
  private readonly noFits: NoFit[] = []
  private readonly x: Float64Array
  private readonly y: Float64Array
  private readonly weight: Float64Array
  private readonly minX: Float64Array
  private readonly minY: Float64Array
  private readonly maxX: Float64Array
  private readonly maxY: Float64Array
  private readonly nearest: Nearest = { x: 0, y: 0, dx: 0, dy: 0 }

  constructor(most: number) {
    this.x = new Float64Array(most)
    this.y = new Float64Array(most)
    this.weight = new Float64Array(most)
    this.minX = new Float64Array(most)
    this.minY = new Float64Array(most)
    this.maxX = new Float64Array(most)
    this.maxY = new Float64Array(most)
  }

  clear(): void {
    this.count = 0
  }

  add(noFit: NoFit, x: number, y: number, weight: number): void {
    const i = this.count++
    const { flat } = noFit
    this.noFits[i] = noFit
    this.x[i] = x
    this.y[i] = y
    this.weight[i] = weight
    this.minX[i] = flat.minX + x
    this.minY[i] = flat.minY + y
    this.maxX[i] = flat.maxX + x
    this.maxY[i] = flat.maxY + y
  }

  get size(): number {
    return this.count
  }

  flat(i: number): FlatRings {
    return (this.noFits[i] as NoFit).flat
  }

  noFitX(i: number): number {
    return this.x[i] as number
  }

  noFitY(i: number): number {
    return this.y[i] as number
  }

  /** Weighted sum of penetration depths at (x, y); stops adding once it passes `limit`. */
  overlap(x: number, y: number, limit: number): number {
    const { minX, minY, maxX, maxY, count } = this
    let sum = 0
    for (let i = 0; i < count; i++) {
      if (
        x <= (minX[i] as number) ||
        x >= (maxX[i] as number) ||
        y <= (minY[i] as number) ||
        y >= (maxY[i] as number)
      )
        continue
      const noFit = this.noFits[i] as NoFit
      const depth = noFit.depth(x - (this.x[i] as number), y - (this.y[i] as number))
      if (depth === 0) continue
      sum += (this.weight[i] as number) * depth
      if (sum > limit) return sum
    }
    return sum
  }

  /**
   * The nearest way out of every no-fit polygon that (x, y) is in, as lines to reach,
   * at most `most` of them; returns how many were filled in.
   */
  contacts(x: number, y: number, lines: ContactLine[], most: number): number {
    let found = 0
    for (let i = 0; i < this.count && found < most; i++) {
      const noFit = this.noFits[i] as NoFit
      const px = x - (this.x[i] as number)
      const py = y - (this.y[i] as number)
      if (noFit.depth(px, py) === 0) continue
      flatNearest(noFit.flat, px, py, this.nearest)
      const toX = this.nearest.x - px
      const toY = this.nearest.y - py
      const depth = Math.hypot(toX, toY)
      if (depth < 1e-9) continue
      const line = lines[found++] as ContactLine
      line.nx = toX / depth
      line.ny = toY / depth
      line.offset = line.nx * (x + toX) + line.ny * (y + toY)
    }
    return found
  }
}
