import { DEPTH_GRID } from '../config.ts'
import { GridFiller } from './depth-grid-filler.ts'
import { EDGE, edgeNearest, type FlatRings, type Nearest } from './flat-rings.ts'

/** Stands for a cell, and for the least depth in it, where there is no depth at all. */
export const CLEAR = -1

/**
 * Penetration depths of one no-fit polygon, exactly as `flatDepth` gives them but for a few edges a question. A
 * grid over the box says for each cell whether it is clear and, if not, the least depth in it and which edges can be
 * nearest to a point of it; each row of cells knows the edges that a horizontal ray in it can cross.
 */
export class DepthGrid {
  readonly flat: FlatRings
  readonly side: number
  readonly perX: number
  readonly perY: number
  /** At most the depth of any point of the cell; 0 where the boundary crosses it, `CLEAR` outside. */
  private readonly floors: Float32Array
  /** Edges that may be nearest: cell c has `near[starts[c]]` and so many more as `counts[c]` says. */
  private readonly starts: Uint32Array
  private readonly counts: Uint16Array
  private readonly near: Int32Array
  private readonly spanning: Uint32Array
  private readonly spanStarts: Uint32Array
  /** The edge that gave the last depth. */
  private nearestEdge = 0

  constructor(flat: FlatRings) {
    this.flat = flat
    const many = flat.edges.length > DEPTH_GRID.manyEdges * EDGE
    this.side = many ? DEPTH_GRID.fine : DEPTH_GRID.coarse
    this.perX = this.side / (flat.maxX - flat.minX)
    this.perY = this.side / (flat.maxY - flat.minY)
    const cells = this.side * this.side
    this.floors = new Float32Array(cells).fill(CLEAR)
    this.starts = new Uint32Array(cells)
    this.counts = new Uint16Array(cells)
    this.near = new GridFiller(this, this.floors, this.starts, this.counts).fill()
    const spanning = this.spanningEdges()
    this.spanStarts = spanning.starts
    this.spanning = spanning.list
  }

  /** The cell that (x, y) is in, `CLEAR` if no point of it has any depth. */
  cell(x: number, y: number): number {
    const { flat, side } = this
    const column = Math.floor((x - flat.minX) * this.perX)
    const row = Math.floor((y - flat.minY) * this.perY)
    if (column < 0 || row < 0 || column >= side || row >= side) return CLEAR
    const cell = row * side + column
    return this.floors[cell] === CLEAR ? CLEAR : cell
  }

  /** No point of the cell has less depth. */
  floor(cell: number): number {
    return this.floors[cell] as number
  }

  /** How far (x, y) lies inside, 0 if it does not. */
  depth(x: number, y: number): number {
    const cell = this.cell(x, y)
    return cell === CLEAR ? 0 : this.depthIn(cell, x, y)
  }

  /** The depth of a point of the cell. */
  depthIn(cell: number, x: number, y: number): number {
    if (this.floors[cell] === 0 && !this.contains(Math.floor(cell / this.side), x, y)) return 0
    const { edges } = this.flat
    const { near } = this
    let k = this.starts[cell] as number
    const end = k + (this.counts[cell] as number)
    let least = Number.POSITIVE_INFINITY
    for (; k < end; k++) {
      const i = near[k] as number
      const px = x - (edges[i] as number)
      const py = y - (edges[i + 1] as number)
      const dx = edges[i + 3] as number
      const dy = edges[i + 4] as number
      let t = (px * dx + py * dy) * (edges[i + 5] as number)
      if (t < 0) t = 0
      else if (t > 1) t = 1
      const ex = px - t * dx
      const ey = py - t * dy
      const d2 = ex * ex + ey * ey
      if (d2 < least) {
        least = d2
        this.nearestEdge = i
      }
    }
    return Math.sqrt(least)
  }

  /** As `depth`; if it is not 0, `into` is the boundary point nearest to (x, y). */
  wayOut(x: number, y: number, into: Nearest): number {
    const depth = this.depth(x, y)
    if (depth > 0) edgeNearest(this.flat, this.nearestEdge, x, y, into)
    return depth
  }

  private contains(row: number, x: number, y: number): boolean {
    const { edges } = this.flat
    const { spanning } = this
    const end = this.spanStarts[row + 1] as number
    let inside = false
    for (let k = this.spanStarts[row] as number; k < end; k++) {
      const i = spanning[k] as number
      const ay = edges[i + 1] as number
      if (ay > y !== (edges[i + 2] as number) > y) {
        const along = ((y - ay) * (edges[i + 3] as number)) / (edges[i + 4] as number)
        if (x - (edges[i] as number) < along) inside = !inside
      }
    }
    return inside
  }

  private spanningEdges(): { readonly starts: Uint32Array; readonly list: Uint32Array } {
    const { flat, side, perY } = this
    const { edges } = flat
    const starts = [0]
    const list: number[] = []
    for (let row = 0; row < side; row++) {
      // A hair beyond the row, for rounding.
      const low = flat.minY + (row - 1e-6) / perY
      const high = flat.minY + (row + 1 + 1e-6) / perY
      for (let i = 0; i < edges.length; i += EDGE) {
        const ay = edges[i + 1] as number
        const by = edges[i + 2] as number
        if (Math.min(ay, by) <= high && Math.max(ay, by) >= low) list.push(i)
      }
      starts.push(list.length)
    }
    return { starts: Uint32Array.from(starts), list: Uint32Array.from(list) }
  }
}
