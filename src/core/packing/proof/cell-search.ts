import type { Bitmap } from './bitmap.ts'
import type { CellGrid, Sheet } from './cells.ts'

/** One copy that must have a cell: its item, and its sheets, one for each region and core. */
export interface Wanted {
  readonly item: number
  readonly sheets: readonly Sheet[]
}

export type CellOutcome = 'none' | 'some'

/** Work between two pauses, in words of bitmap touched: a few milliseconds. */
const PAUSE_WORK = 20_000

/**
 * Complete search: can each copy have an open cell, no two in conflict? Smallest domain first, forward checking.
 * `none`: no packing, since a true packing's positions lie in such cells. `some` proves nothing. Equal copies are
 * interchangeable: once a cell has failed for one, it is closed for all of them below.
 *
 * Yields the work done since the last pause, in words of bitmap touched.
 */
export function* searchCells(grid: CellGrid, wanted: readonly Wanted[]): Generator<number, CellOutcome> {
  let work = 0

  function* place(open: readonly Wanted[]): Generator<number, boolean> {
    if (open.length === 0) return true
    const chosen = smallest(open)
    if (chosen === null) return false
    let rest = open.map((copy) =>
      copy.item === chosen.item ? { ...copy, sheets: copiesOf(copy.sheets) } : copy,
    )
    const self = rest[open.indexOf(chosen)] as Wanted
    rest = rest.filter((copy) => copy !== self)
    for (const [s, sheet] of self.sheets.entries()) {
      for (const [x, y] of sheet.open.cells()) {
        if (work + grid.work > PAUSE_WORK) {
          yield work + grid.work
          work = 0
          grid.work = 0
        }
        const next = rest.map((copy) => ({
          item: copy.item,
          sheets: copy.sheets.map((other) => without(grid, other, sheet, x, y)),
        }))
        work += next.reduce(
          (sum, copy) => sum + copy.sheets.reduce((words, { open: bits }) => words + bits.words.length, 0),
          1,
        )
        if (yield* place(next)) return true
        for (const copy of rest) if (copy.item === chosen.item) (copy.sheets[s] as Sheet).open.clear(x, y)
      }
    }
    return false
  }

  const found = yield* place(wanted)
  return found ? 'some' : 'none'
}

function copiesOf(sheets: readonly Sheet[]): readonly Sheet[] {
  return sheets.map((sheet) => ({ ...sheet, open: sheet.open.copy() }))
}

/** The copy with the fewest open cells; null if some copy has none. */
function smallest(copies: readonly Wanted[]): Wanted | null {
  let best = copies[0] as Wanted
  let least = Number.POSITIVE_INFINITY
  for (const copy of copies) {
    const count = copy.sheets.reduce((sum, { open }) => sum + open.count(), 0)
    if (count === 0) return null
    if (count < least) {
      best = copy
      least = count
    }
  }
  return best
}

/** The sheet without the cells in conflict with a copy in cell (x, y) of `fixed`. */
function without(grid: CellGrid, sheet: Sheet, fixed: Sheet, x: number, y: number): Sheet {
  if (sheet.region !== fixed.region) return sheet
  const open: Bitmap = sheet.open.copy()
  for (const run of grid.conflicts(fixed.core, sheet.core)) open.clearRun(y + run.y, x + run.from, x + run.to)
  return { ...sheet, open }
}
