import { DEPTH_GRID } from '../config.ts'
import { EDGE, type FlatRings, flatContains, flatDistance2 } from './flat-rings.ts'

const OUTSIDE = 0
const INSIDE = 1
const CROSSED = 2

/**
 * Penetration depths of one no-fit polygon, exactly as `flatDepth` gives them but for a few edges a question. A
 * grid over the box says for each cell whether it lies outside, inside or is crossed by the boundary, and which
 * edges can be nearest to a point of it; each row of cells knows the edges that a horizontal ray in it can cross.
 */
export class DepthGrid {
  readonly flat: FlatRings
  private readonly columns = DEPTH_GRID.cells
  private readonly rows = DEPTH_GRID.cells
  private readonly perX: number
  private readonly perY: number
  private readonly state: Uint8Array
  private readonly near: EdgeLists
  private readonly spanning: EdgeLists

  constructor(flat: FlatRings) {
    this.flat = flat
    this.perX = this.columns / (flat.maxX - flat.minX)
    this.perY = this.rows / (flat.maxY - flat.minY)
    this.state = new Uint8Array(this.columns * this.rows)
    this.near = this.nearEdges()
    this.spanning = this.spanningEdges()
  }

  /** How far (x, y) lies inside, 0 if it does not. */
  depth(x: number, y: number): number {
    const { flat } = this
    const column = Math.floor((x - flat.minX) * this.perX)
    const row = Math.floor((y - flat.minY) * this.perY)
    if (column < 0 || row < 0 || column >= this.columns || row >= this.rows) return 0
    const cell = row * this.columns + column
    const state = this.state[cell] as number
    if (state === OUTSIDE || (state === CROSSED && !this.contains(row, x, y))) return 0
    const { edges } = flat
    const { starts, list } = this.near
    const end = starts[cell + 1] as number
    let least = Number.POSITIVE_INFINITY
    for (let k = starts[cell] as number; k < end; k++) {
      const i = list[k] as number
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
      if (d2 < least) least = d2
    }
    return Math.sqrt(least)
  }

  private contains(row: number, x: number, y: number): boolean {
    const { edges } = this.flat
    const { starts, list } = this.spanning
    const end = starts[row + 1] as number
    let inside = false
    for (let k = starts[row] as number; k < end; k++) {
      const i = list[k] as number
      const ay = edges[i + 1] as number
      if (ay > y !== (edges[i + 2] as number) > y) {
        const along = ((y - ay) * (edges[i + 3] as number)) / (edges[i + 4] as number)
        if (x - (edges[i] as number) < along) inside = !inside
      }
    }
    return inside
  }

  /** Finds each cell's state, and for cells not outside the edges that may be nearest. */
  private nearEdges(): EdgeLists {
    const { flat, columns, rows, perX, perY } = this
    // A hair more than half the diagonal of a cell, for rounding.
    const half = 0.5001 * Math.hypot(1 / perX, 1 / perY)
    const lists = new ListBuilder()
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const x = flat.minX + (column + 0.5) / perX
        const y = flat.minY + (row + 0.5) / perY
        const distance = Math.sqrt(flatDistance2(flat, x, y))
        const crossed = distance <= half
        const state = crossed ? CROSSED : flatContains(flat, x, y) ? INSIDE : OUTSIDE
        this.state[row * columns + column] = state
        if (state !== OUTSIDE) this.addWithin(lists, x, y, distance + 2 * half)
        lists.close()
      }
    }
    return lists.done()
  }

  private addWithin(lists: ListBuilder, x: number, y: number, reach: number): void {
    const { edges } = this.flat
    for (let i = 0; i < edges.length; i += EDGE) {
      const px = x - (edges[i] as number)
      const py = y - (edges[i + 1] as number)
      const dx = edges[i + 3] as number
      const dy = edges[i + 4] as number
      const t = Math.max(0, Math.min(1, (px * dx + py * dy) * (edges[i + 5] as number)))
      if (Math.hypot(px - t * dx, py - t * dy) <= reach) lists.add(i)
    }
  }

  private spanningEdges(): EdgeLists {
    const { flat, rows, perY } = this
    const { edges } = flat
    const lists = new ListBuilder()
    for (let row = 0; row < rows; row++) {
      // A hair beyond the row, for rounding.
      const low = flat.minY + (row - 1e-6) / perY
      const high = flat.minY + (row + 1 + 1e-6) / perY
      for (let i = 0; i < edges.length; i += EDGE) {
        const ay = edges[i + 1] as number
        const by = edges[i + 2] as number
        if (Math.min(ay, by) <= high && Math.max(ay, by) >= low) lists.add(i)
      }
      lists.close()
    }
    return lists.done()
  }
}

/** Many short lists of edges in two arrays; an edge is named by where it starts among the flat numbers. */
interface EdgeLists {
  readonly starts: Uint32Array
  readonly list: Uint32Array
}

class ListBuilder {
  private readonly starts = [0]
  private readonly list: number[] = []

  add(edge: number): void {
    this.list.push(edge)
  }

  close(): void {
    this.starts.push(this.list.length)
  }

  done(): EdgeLists {
    return { starts: Uint32Array.from(this.starts), list: Uint32Array.from(this.list) }
  }
}
