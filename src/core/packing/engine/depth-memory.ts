import { DEPTH_GRID } from '../config.ts'
import { type DepthGrid, depthGrid } from './depth-grid.ts'
import { CLEAR } from './depth-grid-filler.ts'
import { EDGE, edgeDistance2, edgeNearest, type FlatRings, type Nearest } from './flat-rings.ts'

/** What `numbers` hold from a polygon's handle on: its box, and its grid's cells to the millimetre and to a side. */
export const MIN_X = 0
export const MIN_Y = 1
export const MAX_X = 2
export const MAX_Y = 3
export const PER_X = 4
export const PER_Y = 5
export const SIDE = 6
/** Where its cells' floors begin. */
export const FLOORS = 7
/** Where `indices` say of each cell, and of each row, where its edges are listed: up to where those of the next are. */
const NEAR = 8
const SPANNING = 9
/** Questions asked while the grid is a single cell. */
const ASKED = 10
const EDGE_COUNT = 11
/** Here its edges begin, as flat rings hold them. */
const EDGES = 12

/** The floor of all grids of one cell. */
const ONE_CELL = 0

/**
 * Penetration depths of no-fit polygons: how far a point inside one is from its boundary, 0 if outside; the length of the
 * shortest translation that parts two items. Exact, for a few edges a question: a grid over the box of each polygon says
 * for each cell whether it is clear and, if not, the least depth in it and which edges can be nearest to a point of it;
 * each row of cells knows the edges that a horizontal ray in it can cross. The grid is a single cell until there have been
 * enough questions to make a finer one pay.
 *
 * All polygons lie in three arrays, one after another, so that the overlap search goes from one to the next without
 * touching an object. `| 0` there tells the engine that a number is whole: indices are then not computed as fractions.
 */
export class DepthMemory {
  numbers = new Float64Array(1 << 12)
  /** At most the depth of any point of the cell; 0 where the boundary crosses it, `CLEAR` outside. */
  floors = new Float32Array(1 << 12)
  private indices = new Int32Array(1 << 12)
  /** No handle is 0, and the first floor, 0, is that of all grids of one cell. */
  private readonly used = { numbers: 1, floors: ONE_CELL + 1, indices: 0 }
  /** Where the edge that gave the last depth begins. */
  private nearestEdge = 0

  /** Takes a polygon in; gives its handle. */
  keep({ edges, minX, minY, maxX, maxY }: FlatRings): number {
    const count = edges.length / EDGE
    const handle = this.used.numbers
    this.used.numbers += EDGES + edges.length
    this.numbers = longEnough(this.numbers, this.used.numbers)
    this.numbers.set([minX, minY, maxX, maxY], handle)
    this.numbers[handle + EDGE_COUNT] = count
    this.numbers.set(edges, handle + EDGES)
    this.numbers[handle + PER_X] = 1 / (maxX - minX)
    this.numbers[handle + PER_Y] = 1 / (maxY - minY)
    this.numbers[handle + SIDE] = 1
    this.numbers[handle + FLOORS] = ONE_CELL
    // The one cell and the one row have all edges: one list is for both.
    const list = this.roomForList(1, count)
    for (let k = 0; k < count; k++) this.indices[list + 2 + k] = handle + EDGES + k * EDGE
    this.indices[list] = list + 2
    this.indices[list + 1] = list + 2 + count
    this.numbers[handle + NEAR] = list
    this.numbers[handle + SPANNING] = list
    return handle
  }

  /**
   * Notes a question, which a grid of many cells would make quicker; true if there is one, made now, in which case all arrays
   * may be new, or before.
   */
  ask(handle: number): boolean {
    if (this.numbers[handle + SIDE] !== 1) return true
    const asked = (this.numbers[handle + ASKED] as number) + 1
    this.numbers[handle + ASKED] = asked
    if (asked <= DEPTH_GRID.worthwhile) return false
    this.refine(handle)
    return true
  }

  /** Makes the polygon's grid a fine one. */
  refine(handle: number): void {
    this.lay(handle, depthGrid(this.flat(handle)))
  }

  cornerCount(handle: number): number {
    return this.numbers[handle + EDGE_COUNT] as number
  }

  cornerX(handle: number, corner: number): number {
    return this.numbers[handle + EDGES + corner * EDGE] as number
  }

  cornerY(handle: number, corner: number): number {
    return this.numbers[handle + EDGES + corner * EDGE + 1] as number
  }

  /** The cell that (x, y) is in, or `CLEAR` if no point of it has any depth. */
  cell(handle: number, x: number, y: number): number {
    const { numbers } = this
    const column = (x - (numbers[handle + MIN_X] as number)) * (numbers[handle + PER_X] as number)
    const row = (y - (numbers[handle + MIN_Y] as number)) * (numbers[handle + PER_Y] as number)
    const side = (numbers[handle + SIDE] as number) | 0
    // Written so that NaN, of a polygon without any width, is clear.
    if (!(column >= 0 && row >= 0 && column < side && row < side)) return CLEAR
    const cell = (row | 0) * side + (column | 0)
    return this.floors[((numbers[handle + FLOORS] as number) | 0) + cell] === CLEAR ? CLEAR : cell
  }

  /** No point of the cell has less depth. */
  floor(handle: number, cell: number): number {
    return this.floors[((this.numbers[handle + FLOORS] as number) | 0) + cell] as number
  }

  /** How far (x, y) lies inside, 0 if it does not. */
  depth(handle: number, x: number, y: number): number {
    this.ask(handle)
    const cell = this.cell(handle, x, y)
    return cell === CLEAR ? 0 : this.depthIn(handle, cell, x, y)
  }

  /** The depth of a point of the cell. */
  depthIn(handle: number, cell: number, x: number, y: number): number {
    const { numbers, indices } = this
    if (this.floor(handle, cell) === 0 && !this.contains(handle, cell, x, y)) return 0
    const at = ((numbers[handle + NEAR] as number) | 0) + cell
    const end = indices[at + 1] as number
    let least = Number.POSITIVE_INFINITY
    for (let k = indices[at] as number; k < end; k++) {
      const i = indices[k] as number
      const d2 = edgeDistance2(numbers, i, x, y)
      if (d2 < least) {
        least = d2
        this.nearestEdge = i
      }
    }
    return Math.sqrt(least)
  }

  /** As `depth`; if it is not 0, `into` is the boundary point nearest to (x, y). */
  wayOut(handle: number, x: number, y: number, into: Nearest): number {
    const depth = this.depth(handle, x, y)
    if (depth > 0) edgeNearest(this.numbers, this.nearestEdge, x, y, into)
    return depth
  }

  private contains(handle: number, cell: number, x: number, y: number): boolean {
    const { numbers, indices } = this
    const row = (cell / (numbers[handle + SIDE] as number)) | 0
    const at = ((numbers[handle + SPANNING] as number) | 0) + row
    const end = indices[at + 1] as number
    let inside = false
    for (let k = indices[at] as number; k < end; k++) {
      const i = indices[k] as number
      const ay = numbers[i + 1] as number
      if (ay > y !== (numbers[i + 2] as number) > y) {
        const along = ((y - ay) * (numbers[i + 3] as number)) / (numbers[i + 4] as number)
        if (x - (numbers[i] as number) < along) inside = !inside
      }
    }
    return inside
  }

  private flat(handle: number): FlatRings {
    const { numbers } = this
    const at = (k: number) => numbers[handle + k] as number
    const edges = numbers.subarray(handle + EDGES, handle + EDGES + at(EDGE_COUNT) * EDGE)
    return { edges, minX: at(MIN_X), minY: at(MIN_Y), maxX: at(MAX_X), maxY: at(MAX_Y), isBox: false }
  }

  private lay(handle: number, { side, floors, near, nearEnds, spanning, spanningEnds }: DepthGrid): void {
    const floorsAt = this.used.floors
    this.used.floors += floors.length
    this.floors = longEnough(this.floors, this.used.floors)
    this.floors.set(floors, floorsAt)
    const { numbers } = this
    numbers[handle + PER_X] =
      side / ((numbers[handle + MAX_X] as number) - (numbers[handle + MIN_X] as number))
    numbers[handle + PER_Y] =
      side / ((numbers[handle + MAX_Y] as number) - (numbers[handle + MIN_Y] as number))
    numbers[handle + SIDE] = side
    numbers[handle + FLOORS] = floorsAt
    numbers[handle + NEAR] = this.list(handle, near, nearEnds)
    numbers[handle + SPANNING] = this.list(handle, spanning, spanningEnds)
  }

  /** Lists of edges, and before them where each begins and the last ends; gives where those beginnings lie. */
  private list(handle: number, edges: Int32Array, ends: Uint32Array): number {
    const at = this.roomForList(ends.length - 1, edges.length)
    const first = at + ends.length
    const { indices } = this
    for (let k = 0; k < ends.length; k++) indices[at + k] = first + (ends[k] as number)
    for (let k = 0; k < edges.length; k++) indices[first + k] = handle + EDGES + (edges[k] as number)
    return at
  }

  /** Where there is room for so many lists, together of so many edges. */
  private roomForList(lists: number, edges: number): number {
    const at = this.used.indices
    this.used.indices += lists + 1 + edges
    this.indices = longEnough(this.indices, this.used.indices)
    return at
  }
}

/** The array, or one at least twice as long that begins alike. */
function longEnough<A extends Float64Array | Float32Array | Int32Array>(array: A, length: number): A {
  if (length <= array.length) return array
  const longer = new (array.constructor as new (length: number) => A)(Math.max(2 * array.length, length))
  longer.set(array)
  return longer
}
