import type { Slices } from '../../base/slices.ts'
import type { Mm } from '../../base/units.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Point, Polygon, Way } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { neededItems } from './area.ts'
import { type Slot, type SquarePuzzle, solvePuzzle } from './square-puzzle.ts'

/** A region or outline whose bounds hold more squares than this is not searched. */
const MOST_SQUARES = 400

/**
 * Puzzles of whole squares: every outline, region and forbidden area has upright and level edges only, whole
 * multiples of one unit long; turns are quarters; there is no clearance.
 *
 * Lemma: such a problem has a packing exactly if it has one at whole multiples of the unit. Round every position
 * down to whole units: two unit squares that lie apart along x, x₁ + 1 ≤ x₂, still do, since ⌊x₁⌋ + 1 = ⌊x₁ + 1⌋ ≤
 * ⌊x₂⌋, and so along y; and every unit square of a piece lies apart in this way from every unit square of another,
 * of a forbidden area and of what is outside the region. So the complete search over whole positions decides.
 *
 * Coordinates are read as decimals with six digits. A generator that pauses; `null` when it has found no proof.
 */
export function* refuteWholeSquares(problem: PackingProblem): Generator<void, Refutation | null> {
  const puzzle = yield* puzzleOf(problem)
  if (!puzzle || (yield* solvePuzzle(puzzle)) !== 'none') return null
  const copies = puzzle.kinds.reduce((sum, kind) => sum + kind.copies, 0)
  const certificate = { by: 'squares', unit: puzzle.unit } as const
  return { kind: 'group', items: neededItems(problem), figures: { copies }, certificate }
}

function* puzzleOf(problem: PackingProblem): Slices<(SquarePuzzle & { readonly unit: Mm }) | null> {
  const items = neededItems(problem).map((i) => problem.items[i] as Item)
  const quarters = items.every(({ ways }) =>
    ways.flat().every(({ turn, tilt }) => tilt === 0 && turn % 90 === 0),
  )
  const unit = problem.clearance === 0 && quarters ? commonUnit(items, problem.regions) : null
  if (unit === null) return null
  const numbers = problem.regions.map(
    (region) => new Map<string, number>(freeSquares(region, unit).map((s) => [s, 0])),
  )
  let squares = 0
  for (const ofRegion of numbers) for (const square of ofRegion.keys()) ofRegion.set(square, squares++)
  if (items.length * squares > MOST_SLOTS) return null
  const kinds: { copies: number; slots: Slot[] }[] = []
  for (const { outline, copies, ways } of items) {
    const slots: Slot[] = []
    for (const [r, ofRegion] of numbers.entries())
      for (const way of ways[r] ?? []) {
        slots.push(...slotsOf(outline, way, unit, ofRegion))
        yield
      }
    kinds.push({ copies, slots })
  }
  return { squares, kinds, unit }
}

/** Of more squares than this, times items, no slots are made. */
const MOST_SLOTS = 40_000

const DIGITS = 1e6

/** The largest length that divides every edge, and every forbidden area's distance from its region's corner; null if there is none, or it is too fine. */
function commonUnit(items: readonly Item[], regions: readonly Region[]): Mm | null {
  const grounds = regions.flatMap(({ outline, forbidden }) => [outline, ...forbidden])
  const polygons = [...items.map(({ outline }) => outline), ...grounds]
  const steps = [
    ...polygons.flatMap((polygon) =>
      polygon.map((point, i) => stepTo(point, polygon[(i + 1) % polygon.length] as Point)),
    ),
    ...regions.flatMap(({ outline, forbidden }) =>
      forbidden.flatMap((area) => alongAxes(outline[0] as Point, area[0] as Point)),
    ),
  ]
  if (steps.some(Number.isNaN)) return null
  const unit = steps.reduce((divisor, step) => gcd(divisor, Math.abs(step)), 0) / DIGITS
  if (!(unit > 0)) return null
  const few = polygons.every((polygon) => {
    const { minX, minY, maxX, maxY } = polygonBox(polygon)
    return (maxX - minX) * (maxY - minY) <= MOST_SQUARES * unit * unit
  })
  return few ? unit : null
}

/** Length of an edge in millionths; not a number if it slants. */
function stepTo(from: Point, to: Point): number {
  const [dx, dy] = alongAxes(from, to)
  return dx === 0 || dy === 0 ? dx + dy : Number.NaN
}

/** Differences in millionths; not numbers if they have more digits. */
function alongAxes(from: Point, to: Point): readonly [number, number] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]].map((length) => {
    const whole = Math.round(length * DIGITS)
    return Math.abs(whole - length * DIGITS) < 1e-3 ? whole : Number.NaN
  })
  return [dx as number, dy as number]
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b)
}

type Square = readonly [number, number]

/** The free squares of a region, as `column,row` from its first corner. */
function freeSquares({ outline, forbidden }: Region, unit: Mm): readonly string[] {
  const origin = outline[0] as Point
  const taken = new Set(forbidden.flatMap((area) => squaresOf(area, origin, unit)).map(String))
  return squaresOf(outline, origin, unit)
    .map(String)
    .filter((square) => !taken.has(square))
}

/** Every place for an outline, held so, on free squares of a region, as the numbers of those squares. */
function slotsOf(outline: Polygon, way: Way, unit: Mm, free: ReadonlyMap<string, number>): Slot[] {
  const targets = [...free.keys()].map((key) => key.split(',').map(Number) as [number, number])
  const held = polygonOriented(outline, way)
  const squares = squaresOf(held, held[0] as Point, unit)
  const [firstX, firstY] = squares[0] as Square
  return targets.flatMap(([x, y]) => {
    const slot: number[] = []
    for (const square of squares) {
      const number = free.get(`${square[0] - firstX + x},${square[1] - firstY + y}`)
      if (number === undefined) return []
      slot.push(number)
    }
    return [slot.sort((a, b) => a - b)]
  })
}

/** The unit squares that an upright polygon covers, row by row from an origin. */
function squaresOf(polygon: Polygon, [ox, oy]: Point, unit: Mm): Square[] {
  const corners = polygon.map(([x, y]): Point => [Math.round((x - ox) / unit), Math.round((y - oy) / unit)])
  const { minX, minY, maxX, maxY } = polygonBox(corners)
  const squares: Square[] = []
  for (let y = minY; y < maxY; y++)
    for (let x = minX; x < maxX; x++) if (coversMiddle(corners, x + 0.5, y + 0.5)) squares.push([x, y])
  return squares
}

/** Even–odd along a ray to the right, over the upright edges. */
function coversMiddle(corners: Polygon, x: number, y: number): boolean {
  let inside = false
  let [ax, ay] = corners[corners.length - 1] as Point
  for (const [bx, by] of corners) {
    if (ax === bx && ax > x && ay > y !== by > y) inside = !inside
    ax = bx
    ay = by
  }
  return inside
}
