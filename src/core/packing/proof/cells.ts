import type { Mm } from '../../base/units.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import type { Box } from '../../geometry/types.ts'
import { Bitmap } from './bitmap.ts'
import type { Core, Relaxed } from './relaxed.ts'
import { type Run, runsInside, sidesOfRow } from './squares.ts'

/** Positions of one core in one region, cut into square cells; the bits of cells that may hold a position. */
export interface Sheet {
  readonly region: number
  readonly core: Core
  readonly open: Bitmap
}

/** Cells of one problem at one step. All sheets of a region share one lattice. */
export class CellGrid {
  /** Work spent on conflicts so far, on the scale of bitmap words touched: a search pauses by it. */
  work = 0
  private readonly conflictsOf = new Map<string, readonly Run[]>()
  private readonly frames: readonly Box[]

  constructor(
    private readonly relaxed: Relaxed,
    readonly step: Mm,
  ) {
    this.frames = relaxed.problem.regions.map(({ outline }) => polygonBox(outline))
  }

  /** How many cells the lattices of the regions have: what a sheet costs. */
  size(region: number): number {
    const { width, height } = this.extent(region)
    return width * height
  }

  private extent(region: number): { width: number; height: number } {
    const { minX, minY, maxX, maxY } = this.frames[region] as Box
    return {
      width: Math.ceil((maxX - minX) / this.step) + 1,
      height: Math.ceil((maxY - minY) / this.step) + 1,
    }
  }

  /**
   * The cells that the core's domain touches. Cell (i, j) is the closed square of side `step` whose middle is the
   * lattice point (i, j): a cell that misses the domain holds no position.
   */
  sheet(region: number, core: Core): Sheet {
    const { width, height } = this.extent(region)
    const { minX, minY } = this.frames[region] as Box
    const open = new Bitmap(width, height)
    const domain = this.relaxed.domain(region, core)
    if (domain.length > 0) {
      const box = polygonBox(domain.flat())
      const column = (x: Mm) => Math.min(width - 1, Math.max(0, Math.round((x - minX) / this.step)))
      const row = (y: Mm) => Math.min(height - 1, Math.max(0, Math.round((y - minY) / this.step)))
      // One cell more all round: rounding of the division must not lose a cell.
      const first = Math.max(0, column(box.minX) - 1)
      const last = Math.min(width - 1, column(box.maxX) + 1)
      const half = this.step / 2 + PADDING
      for (let j = Math.max(0, row(box.minY) - 1); j <= Math.min(height - 1, row(box.maxY) + 1); j++)
        for (const [k, side] of sidesOfRow(
          domain,
          minY + j * this.step,
          half,
          minX,
          this.step,
          first,
          last,
        ).entries())
          if (side !== 'outside') open.set(first + k, j)
    }
    return { region, core, open }
  }

  /**
   * Differences of cells, moving less fixed, at which any two positions in them are an overlap: positions in the
   * cells differ by their middles' difference and at most one step each way, so the square of half side `step`
   * round that difference must lie inside the overlap.
   */
  conflicts(fixed: Core, moving: Core): readonly Run[] {
    const key = `${fixed.id} ${moving.id}`
    let runs = this.conflictsOf.get(key)
    if (!runs) {
      const overlap = this.relaxed.overlap(fixed, moving)
      runs = runsInside(overlap, this.step, this.step + PADDING)
      this.work += CONFLICT_WORK + (runs.length * overlap.flat().length) / 2
      this.conflictsOf.set(key, runs)
    }
    return runs
  }
}

/** What one conflict costs at least. */
const CONFLICT_WORK = 500

/** Widens every square, so that no rounding of doubles lets a position fall between cells. */
const PADDING: Mm = 1e-6
