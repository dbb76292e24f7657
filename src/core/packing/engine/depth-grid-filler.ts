import type { DepthGrid } from './depth-grid.ts'
import { EDGE, edgeDistance2, type FlatRings, flatContains } from './flat-rings.ts'

/** Stands for the least depth in a cell where there is no depth at all. */
export const CLEAR = -1

/**
 * Fills the cells of a depth grid, square block by square block, each in quarters: only edges that may be nearest to
 * some point of a block can be so in its quarters, and a block that lies outside is done with at once.
 */
export class GridFiller {
  /** Edges of the blocks being divided, each block's after those of the block it is a quarter of. */
  private readonly edges: Int32Array
  /** How far each of them is from the middle of its block. */
  private readonly distances: Float64Array
  private readonly perX: number
  private readonly perY: number
  private readonly floors: Float32Array
  /** Edges of the cells that are done: of cell c `near[starts[c]]` and so many more as `counts[c]` says. */
  private near: Int32Array
  private readonly starts: Uint32Array
  private readonly counts: Uint32Array
  private used = 0

  constructor(
    private readonly flat: FlatRings,
    private readonly side: number,
  ) {
    const count = flat.edges.length / EDGE
    const levels = Math.log2(side) + 2
    this.edges = new Int32Array(levels * count)
    for (let i = 0; i < count; i++) this.edges[i] = i * EDGE
    this.distances = new Float64Array(levels * count)
    this.perX = side / (flat.maxX - flat.minX)
    this.perY = side / (flat.maxY - flat.minY)
    const cells = side * side
    this.floors = new Float32Array(cells).fill(CLEAR)
    this.near = new Int32Array(4 * cells)
    this.starts = new Uint32Array(cells)
    this.counts = new Uint32Array(cells)
  }

  fill(): Pick<DepthGrid, 'floors' | 'near' | 'nearEnds'> {
    const { side, flat, floors, counts, starts } = this
    this.divide(0, 0, side, 0, flat.edges.length / EDGE, false)
    const near = new Int32Array(this.used)
    const nearEnds = new Uint32Array(counts.length + 1)
    let at = 0
    for (let cell = 0; cell < counts.length; cell++) {
      const start = starts[cell] as number
      const count = counts[cell] as number
      near.set(this.near.subarray(start, start + count), at)
      at += count
      nearEnds[cell + 1] = at
    }
    return { floors, near, nearEnds }
  }

  /** The block's edges are `edges[from]` … `edges[to − 1]`; `inside`: it is known to lie inside. */
  private divide(column: number, row: number, span: number, from: number, to: number, inside: boolean): void {
    const { flat, perX, perY } = this
    const x = flat.minX + (column + span / 2) / perX
    const y = flat.minY + (row + span / 2) / perY
    // A hair more than half the block's diagonal, for rounding.
    const half = 0.5001 * span * Math.hypot(1 / perX, 1 / perY)
    const distance = this.measure(x, y, from, to)
    const crossed = distance <= half
    if (!crossed && !inside && !flatContains(flat, x, y)) return
    const end = this.keepWithin(distance + 2 * half, from, to)
    if (span === 1) {
      this.close(row * this.side + column, crossed ? 0 : distance - half, to, end)
      return
    }
    const part = span / 2
    for (let quarter = 0; quarter < 4; quarter++)
      this.divide(column + (quarter & 1) * part, row + (quarter >> 1) * part, part, to, end, !crossed)
  }

  /** Notes the distance of each edge from (x, y) and gives the least. */
  private measure(x: number, y: number, from: number, to: number): number {
    const { edges } = this.flat
    let least = Number.POSITIVE_INFINITY
    for (let k = from; k < to; k++) {
      const i = this.edges[k] as number
      const distance = Math.sqrt(edgeDistance2(edges, i, x, y))
      this.distances[k] = distance
      if (distance < least) least = distance
    }
    return least
  }

  /** Copies the edges within reach behind the block's own; gives their end. */
  private keepWithin(reach: number, from: number, to: number): number {
    let end = to
    for (let k = from; k < to; k++)
      if ((this.distances[k] as number) <= reach) this.edges[end++] = this.edges[k] as number
    return end
  }

  private close(cell: number, floor: number, from: number, to: number): void {
    const count = to - from
    if (this.used + count > this.near.length) {
      const longer = new Int32Array(2 * this.near.length + count)
      longer.set(this.near)
      this.near = longer
    }
    this.near.set(this.edges.subarray(from, to), this.used)
    // Rounding to fewer digits must not lift the floor.
    this.floors[cell] = floor * (1 - 1e-6)
    this.starts[cell] = this.used
    this.counts[cell] = count
    this.used += count
  }
}
