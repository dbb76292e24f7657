import { CLEAR, type DepthGrid } from '../engine/depth-grid.ts'
import type { FlatRings, Nearest } from '../engine/flat-rings.ts'
import type { NoFit } from '../engine/no-fit-table.ts'

/** A straight line n · p = offset that the moved item has to reach or not to cross; n has length 1. */
export interface ContactLine {
  nx: number
  ny: number
  offset: number
}

/** Numbers kept for each neighbour: the box of its no-fit polygon as it lies, where its origin lies, and its weight. */
const STRIDE = 8
const MIN_X = 0
const MIN_Y = 1
const MAX_X = 2
const MAX_Y = 3
const AT_X = 4
const AT_Y = 5
const WEIGHT = 6

/** Stands for the cell where there is no grid yet. */
const UNKNOWN = -2

/**
 * What one item in one shape runs into: the no-fit polygons of the items around it, each at its place and with
 * its weight. Filled again for every item that moves; the search asks it for thousands of positions.
 */
export class Neighbours {
  private count = 0
  private readonly noFits: NoFit[] = []
  private readonly data: Float64Array
  /** Positions in this box meet none but the first `near` neighbours. */
  private focus = { minX: 0, minY: 0, maxX: -1, maxY: -1 }
  private near = 0
  /** Neighbours met at the position asked about, the cells of their grids that it is in, and the least depths there. */
  private readonly hits: Int32Array
  private readonly cells: Int32Array
  private readonly floors: Float64Array
  private readonly nearest: Nearest = { x: 0, y: 0, dx: 0, dy: 0 }

  constructor(most: number) {
    this.data = new Float64Array(most * STRIDE)
    this.hits = new Int32Array(most)
    this.cells = new Int32Array(most)
    this.floors = new Float64Array(most)
  }

  clear(): void {
    this.count = 0
    this.focus.maxX = Number.NEGATIVE_INFINITY
  }

  add(noFit: NoFit, x: number, y: number, weight: number): void {
    const at = this.count * STRIDE
    const { data } = this
    const { flat } = noFit
    this.noFits[this.count++] = noFit
    data[at + MIN_X] = flat.minX + x
    data[at + MIN_Y] = flat.minY + y
    data[at + MAX_X] = flat.maxX + x
    data[at + MAX_Y] = flat.maxY + y
    data[at + AT_X] = x
    data[at + AT_Y] = y
    data[at + WEIGHT] = weight
  }

  get size(): number {
    return this.count
  }

  flat(i: number): FlatRings {
    return (this.noFits[i] as NoFit).flat
  }

  noFitX(i: number): number {
    return this.data[i * STRIDE + AT_X] as number
  }

  noFitY(i: number): number {
    return this.data[i * STRIDE + AT_Y] as number
  }

  /** Makes questions about positions within `reach` of (x, y) along both axes cheap, until the next `clear`. */
  focusOn(x: number, y: number, reach: number): void {
    const { data, focus } = this
    focus.minX = x - reach
    focus.maxX = x + reach
    focus.minY = y - reach
    focus.maxY = y + reach
    this.near = 0
    for (let i = 0; i < this.count; i++) {
      const at = i * STRIDE
      if (
        focus.maxX > (data[at + MIN_X] as number) &&
        focus.minX < (data[at + MAX_X] as number) &&
        focus.maxY > (data[at + MIN_Y] as number) &&
        focus.minY < (data[at + MAX_Y] as number)
      )
        this.exchange(i, this.near++)
    }
  }

  private exchange(i: number, j: number): void {
    if (i === j) return
    const { data, noFits } = this
    for (let k = 0; k < STRIDE; k++) {
      const held = data[i * STRIDE + k] as number
      data[i * STRIDE + k] = data[j * STRIDE + k] as number
      data[j * STRIDE + k] = held
    }
    const held = noFits[i] as NoFit
    noFits[i] = noFits[j] as NoFit
    noFits[j] = held
  }

  /** How many neighbours, from the first, a position may meet. */
  private reachable(x: number, y: number): number {
    const { focus } = this
    return x >= focus.minX && x <= focus.maxX && y >= focus.minY && y <= focus.maxY ? this.near : this.count
  }

  /**
   * Weighted sum of penetration depths at (x, y); any sum above `limit` stands for all. Most positions are found to be
   * above it by the least depths of their grid cells alone. The sum is the same with grids and without.
   */
  overlap(x: number, y: number, limit: number): number {
    const { data, hits, cells, floors } = this
    const end = this.reachable(x, y) * STRIDE
    let least = 0
    let met = 0
    for (let at = 0; at < end; at += STRIDE) {
      if (
        x <= (data[at + MIN_X] as number) ||
        x >= (data[at + MAX_X] as number) ||
        y <= (data[at + MIN_Y] as number) ||
        y >= (data[at + MAX_Y] as number)
      )
        continue
      const noFit = this.noFits[at / STRIDE] as NoFit
      const px = x - (data[at + AT_X] as number)
      const py = y - (data[at + AT_Y] as number)
      const grid = noFit.forQuestion()
      const cell = grid ? grid.cell(px, py) : UNKNOWN
      if (cell === CLEAR) continue
      const floor = grid ? grid.floor(cell) : noFit.depth(px, py)
      least += (data[at + WEIGHT] as number) * floor
      if (least > limit) return least
      hits[met] = at
      cells[met] = cell
      floors[met++] = floor
    }
    return this.exactOverlap(x, y, met, least, limit)
  }

  /** The sum over the neighbours met, of which no more is known than that it is at least `least`. */
  private exactOverlap(x: number, y: number, met: number, least: number, limit: number): number {
    const { data, hits, cells, floors } = this
    // What rounding may add to a sum of floors and depths.
    const above = limit * (1 + 1e-9)
    let sum = 0
    let bound = least
    for (let k = 0; k < met; k++) {
      const at = hits[k] as number
      const cell = cells[k] as number
      const weight = data[at + WEIGHT] as number
      let depth = floors[k] as number
      if (cell !== UNKNOWN) {
        const grid = (this.noFits[at / STRIDE] as NoFit).forQuestion() as DepthGrid
        depth = grid.depthIn(cell, x - (data[at + AT_X] as number), y - (data[at + AT_Y] as number))
        bound += weight * (depth - (floors[k] as number))
        if (bound > above) return bound
      }
      sum += weight * depth
    }
    return sum
  }

  /**
   * The nearest way out of every no-fit polygon that (x, y) is in, as lines to reach,
   * at most `most` of them; returns how many were filled in.
   */
  contacts(x: number, y: number, lines: ContactLine[], most: number): number {
    const { data, nearest } = this
    const count = this.reachable(x, y)
    let found = 0
    for (let i = 0; i < count && found < most; i++) {
      const px = x - (data[i * STRIDE + AT_X] as number)
      const py = y - (data[i * STRIDE + AT_Y] as number)
      const depth = (this.noFits[i] as NoFit).wayOut(px, py, nearest)
      if (depth < 1e-9) continue
      const line = lines[found++] as ContactLine
      line.nx = (nearest.x - px) / depth
      line.ny = (nearest.y - py) / depth
      line.offset = line.nx * (x + nearest.x - px) + line.ny * (y + nearest.y - py)
    }
    return found
  }
}
