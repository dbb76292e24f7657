import type { Mm } from '../base/units.ts'
import { polygonBox } from '../geometry/index.ts'
import type { Box, Polygon } from '../geometry/types.ts'
import type { FreePanel, GarmentCloth } from './cloth-of.ts'
import { freeRings, hasClearRectangle } from './free-cloth.ts'

/** Cells to the longer side of the panel, in which the search for a rectangle begins. */
const CELLS = 96

/** How often each side is moved out; sides block one another, so the order counts. */
const ORDERS = [
  ['minX', 'maxX', 'minY', 'maxY'],
  ['minY', 'maxY', 'minX', 'maxX'],
] as const

/**
 * A large rectangle along the grain on which nothing is reserved and no flaw lies, both its sides at least `leastWidth`;
 * null if none was found. It is truly clear, and no side of it can move out; a differently shaped one may be a little
 * larger still. By the largest rectangle of clear cells (the histogram method), moved out to the cloth's true edges.
 */
export function clearRectangle(panel: FreePanel, leastWidth: Mm = 0): Box | null {
  const rings = freeRings(panel)
  if (rings.length === 0) return null
  const bounds = polygonBox(rings.flat())
  const cell = Math.max(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY) / CELLS
  const found = largestOfCells(clearCells(rings, bounds, cell), leastWidth / cell)
  if (!found) return null
  const begun: Box = {
    minX: bounds.minX + found.minX * cell,
    minY: bounds.minY + found.minY * cell,
    maxX: bounds.minX + found.maxX * cell,
    maxY: bounds.minY + found.maxY * cell,
  }
  const grown = ORDERS.map((order) => order.reduce((box, side) => movedOut(box, side, rings), begun))
  return grown.sort((a, b) => boxArea(b) - boxArea(a))[0] ?? null
}

/** Neither way round is a rectangle of these sides clear anywhere: little is left to make anything of. */
export function looksUsedUp(cloth: GarmentCloth, width: Mm, height: Mm): boolean {
  return !hasClearRectangle(cloth, width, height) && !hasClearRectangle(cloth, height, width)
}

function boxArea({ minX, minY, maxX, maxY }: Box): number {
  return (maxX - minX) * (maxY - minY)
}

/** By row and column: true where no boundary passes through the cell and it lies inside. */
function clearCells(rings: readonly Polygon[], bounds: Box, cell: Mm): readonly (readonly boolean[])[] {
  const columns = Math.floor((bounds.maxX - bounds.minX) / cell + 1e-9)
  const rows = Math.floor((bounds.maxY - bounds.minY) / cell + 1e-9)
  return Array.from({ length: rows }, (_, row) => {
    const low = bounds.minY + row * cell
    const line = Array.from({ length: columns }, (_, column) => {
      const x = bounds.minX + (column + 0.5) * cell
      return winding(rings, x, low + cell / 2) > 0
    })
    for (const [from, to] of spansBetween(rings, low, low + cell)) {
      const first = Math.max(0, Math.floor((from - bounds.minX) / cell + 1e-9))
      const last = Math.min(columns - 1, Math.ceil((to - bounds.minX) / cell - 1e-9) - 1)
      for (let column = first; column <= last; column++) line[column] = false
    }
    return line
  })
}

/** How often rings wind round (x, y), holes counting against. */
function winding(rings: readonly Polygon[], x: number, y: number): number {
  let count = 0
  for (const ring of rings) {
    ring.forEach(([bx, by], i) => {
      const [ax, ay] = ring.at(i - 1) as readonly [number, number]
      if (ay <= y === by <= y) return
      const left = (bx - ax) * (y - ay) - (x - ax) * (by - ay) > 0
      if (by > y && left) count++
      else if (by <= y && !left) count--
    })
  }
  return count
}

/** From where to where, in x, each edge passes through the open strip between two heights. */
function spansBetween(rings: readonly Polygon[], low: Mm, high: Mm): readonly (readonly [Mm, Mm])[] {
  return rings.flatMap((ring) =>
    ring.flatMap(([bx, by], i): readonly (readonly [Mm, Mm])[] => {
      const [ax, ay] = ring.at(i - 1) as readonly [number, number]
      const [from, to] = [Math.max(low, Math.min(ay, by)), Math.min(high, Math.max(ay, by))]
      const level = ay === by
      if (level ? ay <= low || ay >= high : from >= to) return []
      const at = (y: number) => (level ? null : ax + ((y - ay) / (by - ay)) * (bx - ax))
      const [x1, x2] = [at(from) ?? ax, at(to) ?? bx]
      return [[Math.min(x1, x2), Math.max(x1, x2)]]
    }),
  )
}

interface Cells {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** The largest rectangle of clear cells with no side under `least` cells; row by row under a histogram of what is clear above. */
function largestOfCells(clear: readonly (readonly boolean[])[], least: number): Cells | null {
  const heights = (clear[0] ?? []).map(() => 0)
  let best: Cells | null = null
  let most = 0
  clear.forEach((line, row) => {
    line.forEach((isClear, column) => {
      heights[column] = isClear ? (heights[column] as number) + 1 : 0
    })
    heights.forEach((_, from) => {
      let height = Number.POSITIVE_INFINITY
      for (let to = from; to < heights.length; to++) {
        height = Math.min(height, heights[to] as number)
        if (height === 0 || height < least) break
        const width = to - from + 1
        if (width < least || width * height <= most) continue
        most = width * height
        best = { minX: from, maxX: to + 1, minY: row + 1 - height, maxY: row + 1 }
      }
    })
  })
  return best
}

/** The box with one side moved out as far as nothing is in its way. */
function movedOut(box: Box, side: keyof Box, rings: readonly Polygon[]): Box {
  const upright = side === 'minX' || side === 'maxX'
  const seen = upright ? rings : rings.map((ring) => ring.map(([x, y]) => [y, x] as const))
  const [low, high] = upright ? [box.minY, box.maxY] : [box.minX, box.maxX]
  const spans = spansBetween(seen, low, high)
  const outward = side === 'maxX' || side === 'maxY'
  const limits = outward
    ? spans.map(([from]) => from).filter((at) => at >= box[side] - SAME)
    : spans.map(([, to]) => to).filter((at) => at <= box[side] + SAME)
  if (limits.length === 0) return box
  return { ...box, [side]: outward ? Math.min(...limits) : Math.max(...limits) }
}

/** Rounding of a cell's edge. */
const SAME: Mm = 1e-6
