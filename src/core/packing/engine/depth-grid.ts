import { DEPTH_GRID } from '../config.ts'
import { GridFiller } from './depth-grid-filler.ts'
import { EDGE, type FlatRings } from './flat-rings.ts'

/** A grid over the box of a no-fit polygon, for `DepthMemory` to ask. Cells go by rows, from the least x and y on. */
export interface DepthGrid {
  /** Cells to a side. */
  readonly side: number
  /** At most the depth of any point of the cell; 0 where the boundary crosses it, `CLEAR` outside. */
  readonly floors: Float32Array
  /** Edges that may be nearest to a point of a cell, as places in the flat rings: for cell c `near[nearEnds[c]]` on, up to `nearEnds[c + 1]`. */
  readonly near: Int32Array
  readonly nearEnds: Uint32Array
  /** Edges that a horizontal ray in a row of cells can cross, row by row in the same way. */
  readonly spanning: Int32Array
  readonly spanningEnds: Uint32Array
}

export function depthGrid(flat: FlatRings): DepthGrid {
  const many = flat.edges.length > DEPTH_GRID.manyEdges * EDGE
  const side = many ? DEPTH_GRID.fine : DEPTH_GRID.coarse
  return { side, ...new GridFiller(flat, side).fill(), ...spanningEdges(flat, side) }
}

function spanningEdges(flat: FlatRings, side: number): Pick<DepthGrid, 'spanning' | 'spanningEnds'> {
  const { edges, minY, maxY } = flat
  const perY = side / (maxY - minY)
  const ends = [0]
  const list: number[] = []
  for (let row = 0; row < side; row++) {
    // A hair beyond the row, for rounding.
    const low = minY + (row - 1e-6) / perY
    const high = minY + (row + 1 + 1e-6) / perY
    for (let i = 0; i < edges.length; i += EDGE) {
      const ay = edges[i + 1] as number
      const by = edges[i + 2] as number
      if (Math.min(ay, by) <= high && Math.max(ay, by) >= low) list.push(i)
    }
    ends.push(list.length)
  }
  return { spanning: Int32Array.from(list), spanningEnds: Uint32Array.from(ends) }
}
