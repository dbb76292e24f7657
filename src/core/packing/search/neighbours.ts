import type { Random } from '../../base/random.ts'
import { CLEAR } from '../engine/depth-grid-filler.ts'
import {
  DepthMemory,
  FLOORS,
  MAX_X,
  MAX_Y,
  MIN_X,
  MIN_Y,
  PER_X,
  PER_Y,
  SIDE,
} from '../engine/depth-memory.ts'
import type { Nearest } from '../engine/flat-rings.ts'

/** A straight line n · p = offset that the moved item has to reach or not to cross; n has length 1. */
export interface ContactLine {
  nx: number
  ny: number
  offset: number
}

/**
 * Numbers kept for each neighbour: the box of its no-fit polygon as it lies (in the order of `DepthMemory`), the cells of
 * its grid to the millimetre, where its origin lies, its weight, and the grid's corner seen from that origin.
 */
const STRIDE = 11
const AT_X = 6
const AT_Y = 7
const WEIGHT = 8
const GRID_X = 9
const GRID_Y = 10
/** Whole numbers kept for each: its polygon's handle, the cells to a side of its grid, and where their floors begin. */
const WHOLE = 3
const HANDLE = 0
const CELLS = 1
const CELL_FLOORS = 2

/**
 * What one item in one shape runs into: the no-fit polygons of the items around it, each at its place and with
 * its weight. Filled again for every item that moves; the search asks it for thousands of positions.
 */
export class Neighbours {
  private count = 0
  private memory = new DepthMemory()
  private readonly data: Float64Array
  private readonly whole: Int32Array
  /** Positions in this box meet none but the first `near` neighbours. */
  private readonly focus = { minX: 0, minY: 0, maxX: -1, maxY: -1 }
  private near = 0
  /** Neighbours met at the position asked about, the cells of their grids that it is in, and the least depths there. */
  private readonly hits: Int32Array
  private readonly cells: Int32Array
  private readonly floors: Float64Array
  private readonly nearest: Nearest = { x: 0, y: 0, dx: 0, dy: 0 }

  constructor(most: number) {
    this.data = new Float64Array(most * STRIDE)
    this.whole = new Int32Array(most * WHOLE)
    this.hits = new Int32Array(most)
    this.cells = new Int32Array(most)
    this.floors = new Float64Array(most)
  }

  /** Begins anew, with polygons of this memory. */
  clear(memory: DepthMemory): void {
    this.count = 0
    this.memory = memory
    this.focus.maxX = Number.NEGATIVE_INFINITY
  }

  /** Adds the no-fit polygon of this handle with its origin at (x, y). */
  add(handle: number, x: number, y: number, weight: number): void {
    const { data } = this
    const { numbers } = this.memory
    const at = this.count * STRIDE
    data[at + MIN_X] = (numbers[handle + MIN_X] as number) + x
    data[at + MIN_Y] = (numbers[handle + MIN_Y] as number) + y
    data[at + MAX_X] = (numbers[handle + MAX_X] as number) + x
    data[at + MAX_Y] = (numbers[handle + MAX_Y] as number) + y
    data[at + AT_X] = x
    data[at + AT_Y] = y
    data[at + WEIGHT] = weight
    data[at + GRID_X] = numbers[handle + MIN_X] as number
    data[at + GRID_Y] = numbers[handle + MIN_Y] as number
    this.whole[this.count * WHOLE + HANDLE] = handle
    this.readGrid(this.count++)
  }

  private readGrid(i: number): void {
    const { data, whole } = this
    const { numbers } = this.memory
    const handle = whole[i * WHOLE + HANDLE] as number
    data[i * STRIDE + PER_X] = numbers[handle + PER_X] as number
    data[i * STRIDE + PER_Y] = numbers[handle + PER_Y] as number
    whole[i * WHOLE + CELLS] = numbers[handle + SIDE] as number
    whole[i * WHOLE + CELL_FLOORS] = numbers[handle + FLOORS] as number
  }

  get size(): number {
    return this.count
  }

  /** A corner, drawn by chance, of the i-th no-fit polygon as it lies. */
  cornerOf(i: number, random: Random, into: { x: number; y: number }): void {
    const { data, memory } = this
    const handle = this.whole[i * WHOLE + HANDLE] as number
    const corner = Math.floor(random() * memory.cornerCount(handle))
    into.x = memory.cornerX(handle, corner) + (data[i * STRIDE + AT_X] as number)
    into.y = memory.cornerY(handle, corner) + (data[i * STRIDE + AT_Y] as number)
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
    swap(this.data, i * STRIDE, j * STRIDE, STRIDE)
    swap(this.whole, i * WHOLE, j * WHOLE, WHOLE)
  }

  /** How many neighbours, from the first, a position may meet. */
  private reachable(x: number, y: number): number {
    const { focus } = this
    return x >= focus.minX && x <= focus.maxX && y >= focus.minY && y <= focus.maxY ? this.near : this.count
  }

  /**
   * Weighted sum of penetration depths at (x, y); any sum above `limit` stands for all. Most positions are found to be
   * above it by the least depths of their grid cells alone.
   */
  overlap(x: number, y: number, limit: number): number {
    const { data, whole, hits, cells, floors, memory } = this
    const cellFloors = memory.floors
    const end = this.reachable(x, y)
    let least = 0
    let met = 0
    for (let i = 0; i < end; i++) {
      const at = i * STRIDE
      if (
        x <= (data[at + MIN_X] as number) ||
        x >= (data[at + MAX_X] as number) ||
        y <= (data[at + MIN_Y] as number) ||
        y >= (data[at + MAX_Y] as number)
      )
        continue
      const side = whole[i * WHOLE + CELLS] as number
      if (side === 1 && memory.ask(whole[i * WHOLE + HANDLE] as number)) {
        this.readGrid(i)
        return this.overlap(x, y, limit)
      }
      // As `DepthMemory.cell`, without a call; `| 0` keeps indices whole numbers to the compiler.
      const px = x - (data[at + AT_X] as number) - (data[at + GRID_X] as number)
      const py = y - (data[at + AT_Y] as number) - (data[at + GRID_Y] as number)
      const column = Math.floor(px * (data[at + PER_X] as number)) | 0
      const row = Math.floor(py * (data[at + PER_Y] as number)) | 0
      if (column < 0 || row < 0 || column >= side || row >= side) continue
      const cell = row * side + column
      const floor = cellFloors[(whole[i * WHOLE + CELL_FLOORS] as number) + cell] as number
      if (floor === CLEAR) continue
      least += (data[at + WEIGHT] as number) * floor
      if (least > limit) return least
      hits[met] = i
      cells[met] = cell
      floors[met++] = floor
    }
    return this.exactOverlap(x, y, met, least, limit)
  }

  /** The sum over the neighbours met, of which no more is known than that it is at least `least`. */
  private exactOverlap(x: number, y: number, met: number, least: number, limit: number): number {
    const { data, whole, hits, cells, floors, memory } = this
    // What rounding may add to a sum of floors and depths.
    const above = limit * (1 + 1e-9)
    let sum = 0
    let bound = least
    for (let k = 0; k < met; k++) {
      const i = hits[k] as number
      const at = i * STRIDE
      const weight = data[at + WEIGHT] as number
      const px = x - (data[at + AT_X] as number)
      const py = y - (data[at + AT_Y] as number)
      const depth = memory.depthIn(whole[i * WHOLE + HANDLE] as number, cells[k] as number, px, py)
      bound += weight * (depth - (floors[k] as number))
      if (bound > above) return bound
      sum += weight * depth
    }
    return sum
  }

  /**
   * The nearest way out of every no-fit polygon that (x, y) is in, as lines to reach,
   * at most `most` of them; returns how many were filled in.
   */
  contacts(x: number, y: number, lines: ContactLine[], most: number): number {
    const { data, whole, nearest, memory } = this
    const count = this.reachable(x, y)
    let found = 0
    for (let i = 0; i < count && found < most; i++) {
      const px = x - (data[i * STRIDE + AT_X] as number)
      const py = y - (data[i * STRIDE + AT_Y] as number)
      const depth = memory.wayOut(whole[i * WHOLE + HANDLE] as number, px, py, nearest)
      if (depth < 1e-9) continue
      const line = lines[found++] as ContactLine
      line.nx = (nearest.x - px) / depth
      line.ny = (nearest.y - py) / depth
      line.offset = line.nx * (x + nearest.x - px) + line.ny * (y + nearest.y - py)
    }
    return found
  }
}

function swap(numbers: Float64Array | Int32Array, a: number, b: number, count: number): void {
  for (let k = 0; k < count; k++) {
    const held = numbers[a + k] as number
    numbers[a + k] = numbers[b + k] as number
    numbers[b + k] = held
  }
}
