import type { Deg, Mm } from '../../base/units.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import type { Refutation } from '../answer.ts'
import type { Item, PackingProblem } from '../problem.ts'
import { areaOf, neededItems } from './area.ts'
import { type CellOutcome, searchCells, type Wanted } from './cell-search.ts'
import { CellGrid, type Sheet } from './cells.ts'
import { Relaxed } from './relaxed.ts'

/** Each level halves the step; the first has this many steps to the longest side of the largest region's bounds. */
const FIRST_STEPS = 16
const LEVELS = 6

/** Bitmap words that the search of one group at the first level may touch; four times as many at each level after it. */
const FIRST_WORK = 200_000

/** A group with more cells than this is not searched at that step. */
const MOST_CELLS = 400_000

/** Widest range of turns for one core at the first level, degrees; halved with the step. */
const FIRST_TILT = 7.5

/**
 * Grid relaxation: positions are cut into cells, and a complete search looks for a cell for each copy with no two
 * in conflict. Lemma: in a true packing every position lies in some cell that touches its core's domain, and two
 * cells of which all positions overlap are not both used; so no choice of cells, no packing. Finer steps leave
 * fewer false choices. The largest copies are tried first, two, then three, …: a group that has no choice of
 * cells refutes all.
 *
 * A generator that pauses after a bounded amount of work; `null` when it has found no proof.
 */
export function* refuteByCells(problem: PackingProblem): Generator<void, Refutation | null> {
  const copies = copiesBySize(problem)
  for (let level = 0; level < LEVELS; level++) {
    const relaxed = new Relaxed(problem, FIRST_TILT / 2 ** level)
    const grid = new CellGrid(relaxed, firstStep(problem) / 2 ** level)
    const wanted = yield* wantedCopies(relaxed, grid, copies)
    if (wanted === null) return null
    for (let count = 1; count <= copies.length; count++) {
      const outcome = yield* searchWithin(grid, wanted.slice(0, count), FIRST_WORK * 4 ** level)
      if (outcome === null) break
      if (outcome === 'none') return refutationOf(copies.slice(0, count), grid.step, FIRST_TILT / 2 ** level)
    }
  }
  return null
}

function refutationOf(copies: readonly number[], step: Mm, tilt: Deg): Refutation {
  const certificate = { by: 'cells', copies, step, tilt } as const
  return { kind: 'group', items: [...new Set(copies)], figures: { copies: copies.length }, certificate }
}

/** Every needed copy as the index of its item, the largest first. */
function copiesBySize(problem: PackingProblem): readonly number[] {
  return [...neededItems(problem)]
    .sort((a, b) => areaOf(problem, b) - areaOf(problem, a))
    .flatMap((i) => Array.from({ length: (problem.items[i] as Item).copies }, () => i))
}

function firstStep({ regions }: PackingProblem): Mm {
  const sides = regions.map(({ outline }) => {
    const { minX, minY, maxX, maxY } = polygonBox(outline)
    return Math.max(maxX - minX, maxY - minY)
  })
  return Math.max(...sides) / FIRST_STEPS
}

/** The copies with all their cells open; null if there would be too many, or some item has no core. */
function* wantedCopies(
  relaxed: Relaxed,
  grid: CellGrid,
  copies: readonly number[],
): Generator<void, readonly Wanted[] | null> {
  const ofItem = new Map<number, Wanted>()
  let cells = 0
  for (const item of new Set(copies)) {
    const sheets: Sheet[] = []
    for (const region of relaxed.problem.regions.keys()) {
      const cores = relaxed.cores(item, region)
      if (cores === null) return null
      cells += cores.length * grid.size(region)
      if (cells > MOST_CELLS) return null
      for (const core of cores) {
        const sheet = grid.sheet(region, core)
        if (sheet.open.count() > 0) sheets.push(sheet)
        yield
      }
    }
    ofItem.set(item, { item, sheets })
  }
  return copies.map((item) => ofItem.get(item) as Wanted)
}

/** The outcome of the search, or null once it has done more than `most` work. */
function* searchWithin(
  grid: CellGrid,
  wanted: readonly Wanted[],
  most: number,
): Generator<void, CellOutcome | null> {
  const search = searchCells(grid, wanted)
  let work = 0
  for (;;) {
    const { done, value } = search.next()
    if (done) return value
    work += value
    if (work > most) return null
    yield
  }
}
