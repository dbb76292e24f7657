import type { Mm } from '../../base/units.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import type { Item, PackingProblem } from '../problem.ts'
import type { Work } from './paving.ts'
import { boundsOf } from './poses.ts'

/** A copy laid on squares: which kind it is, and the numbers of the squares. */
interface Option {
  readonly kind: number
  readonly squares: readonly number[]
}

/**
 * True if all that is needed is made of whole squares of side `unit`, and has no solution on them: exact cover with
 * the tightest condition first, a square that must be covered or a kind that must be placed (Knuth 2000, "Dancing
 * links").
 */
export function haveNoSquares(problem: PackingProblem, unit: Mm, work: Work): boolean {
  const items = problem.items.filter(({ optional }) => !optional)
  if (problem.clearance !== 0 || !areWholeSquares(problem, items, unit)) return false
  const board = boardOf(problem, unit)
  const options = items.flatMap((item, kind) => optionsOf(item, kind, board, unit))
  const copies = items.map((item) => item.copies)
  const covered = items.reduce((sum, { outline, copies: n }) => sum + n * squaresIn(outline, unit).length, 0)
  const squares = board.reduce((sum, { free }) => sum + free.size, 0)
  return !canCover(options, copies, squares - covered, squares, work)
}

function canCover(
  options: readonly Option[],
  copies: readonly number[],
  spare: number,
  squares: number,
  work: Work,
): boolean {
  if (spare < 0) return false
  if (copies.every((n) => n === 0)) return true
  work.spend(options.length)
  const bySquare = new Map<number, Option[]>()
  const byKind = copies.map((): Option[] => [])
  for (const option of options) {
    byKind[option.kind]!.push(option)
    for (const square of option.squares) bySquare.set(square, [...(bySquare.get(square) ?? []), option])
  }
  if (copies.some((n, kind) => n > 0 && byKind[kind]!.length === 0)) return false
  const bound = spare === 0 ? [...bySquare.values()] : []
  if (spare === 0 && bySquare.size < squares) return false
  const kinds = byKind.filter((_, kind) => (copies[kind] as number) > 0)
  const tightest = [...bound, ...kinds].reduce((a, b) => (b.length < a.length ? b : a))
  const byItsKind = kinds.includes(tightest)
  let left = options
  for (const option of tightest) {
    const taken = new Set(option.squares)
    const counts = copies.with(option.kind, (copies[option.kind] as number) - 1)
    const rest = left.filter(
      ({ kind, squares: own }) => (counts[kind] as number) > 0 && !own.some((square) => taken.has(square)),
    )
    if (canCover(rest, counts, spare, squares - option.squares.length, work)) return true
    // A copy that may be any of its kind: once an option has failed, no copy of the kind takes it. The same holds of a square.
    left = left.filter((other) => other !== option)
    if (byItsKind && left.filter(({ kind }) => kind === option.kind).length < (copies[option.kind] as number))
      return false
  }
  return false
}

interface Board {
  readonly free: ReadonlyMap<string, number>
}

/** The free squares of all regions, numbered through, by column and row from each region's lower left. */
function boardOf({ regions }: PackingProblem, unit: Mm): readonly Board[] {
  let count = 0
  return regions.map(({ outline, forbidden }) => {
    const origin = cornerOf(outline)
    const taboo = new Set(forbidden.flatMap((area) => squaresIn(area, unit, origin)))
    const free = new Map<string, number>()
    for (const square of squaresIn(outline, unit, origin)) if (!taboo.has(square)) free.set(square, count++)
    return { free }
  })
}

function optionsOf({ outline, ways }: Item, kind: number, board: readonly Board[], unit: Mm): Option[] {
  const found = new Map<string, Option>()
  board.forEach(({ free }, r) => {
    for (const { turn, mirrored } of ways[r] ?? []) {
      const shape = squaresIn(inQuarters(outline, turn, mirrored), unit).map(numbersOf)
      for (const target of free.keys()) {
        const [x, y] = numbersOf(target)
        const [fx, fy] = shape[0] as readonly [number, number]
        const squares = shape.map(([i, j]) => free.get(`${i - fx + x} ${j - fy + y}`))
        if (squares.includes(undefined)) continue
        const sorted = (squares as number[]).sort((a, b) => a - b)
        found.set(sorted.join(), { kind, squares: sorted })
      }
    }
  })
  return [...found.values()]
}

function numbersOf(key: string): readonly [number, number] {
  return key.split(' ').map(Number) as [number, number]
}

/** Turned over and by quarters, whose cosines are whole. */
function inQuarters(outline: Polygon, turn: number, mirrored: boolean): Polygon {
  const quarters = (((turn / 90) % 4) + 4) % 4
  let points = outline.map(([x, y]): Point => [mirrored ? -x : x, y])
  for (let k = 0; k < quarters; k++) points = points.map(([x, y]): Point => [-y, x])
  return points
}

function cornerOf(outline: Polygon): Point {
  const { minX, minY } = boundsOf(outline)
  return [minX, minY]
}

/** The squares whose middles are inside: an odd number of upright edges lie to the left of each. */
function squaresIn(outline: Polygon, unit: Mm, origin = cornerOf(outline)): string[] {
  const whole = outline.map(([x, y]) => [inUnits(x - origin[0], unit), inUnits(y - origin[1], unit)] as const)
  const { minX, minY, maxX, maxY } = boundsOf(whole)
  const squares: string[] = []
  for (let j = minY; j < maxY; j++) {
    const edges = whole.flatMap(([ax, ay], k) => {
      const [bx, by] = whole[(k + 1) % whole.length] as Point
      return ax === bx && Math.min(ay, by) <= j && j < Math.max(ay, by) ? [ax] : []
    })
    for (let i = minX; i < maxX; i++)
      if (edges.filter((x) => x <= i).length % 2 === 1) squares.push(`${i} ${j}`)
  }
  return squares
}

function inUnits(length: Mm, unit: Mm): number {
  return Math.round(length / unit)
}

/** Lengths are read as decimals with six digits, as they are written. */
const WRITTEN: Mm = 1e-9

function areWholeSquares({ regions }: PackingProblem, items: readonly Item[], unit: Mm): boolean {
  const whole = (length: Mm) => Math.abs(length - unit * Math.round(length / unit)) <= WRITTEN
  const upright = (outline: Polygon, origin: Point) =>
    outline.every(([ax, ay], k) => {
      const [bx, by] = outline[(k + 1) % outline.length] as Point
      return whole(ax - origin[0]) && whole(ay - origin[1]) && (ax === bx || ay === by)
    })
  const quarters = items.every(({ ways }) =>
    ways.flat().every(({ turn, tilt }) => tilt === 0 && turn % 90 === 0),
  )
  return (
    quarters &&
    items.every(({ outline }) => upright(outline, outline[0] as Point)) &&
    regions.every(({ outline, forbidden }) =>
      [outline, ...forbidden].every((area) => upright(area, outline[0] as Point)),
    )
  )
}
