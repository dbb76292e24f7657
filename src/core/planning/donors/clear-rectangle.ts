import type { Mm } from '../../base/units.ts'
import { polygonBox } from '../../geometry/index.ts'
import type { Point, Rings } from '../../geometry/types.ts'

/** Side of the squares that rectangles are made of: finer is no use for judging cloth. */
const CELL: Mm = 10
/** Boundaries so near to a line of the squares, as a share of one, lie on it. */
const ON_LINE = 1e-6

/**
 * Area of the largest rectangle along the grain that lies in the rings (holes wound the other way, nothing crossing), made
 * of whole squares of 10 mm counted from the lower left of their box: never more than the true one. 0 if there is none.
 */
export function largestClearRectangle(rings: Rings): number {
  if (rings.length === 0) return 0
  const { minX, minY, maxX, maxY } = polygonBox(rings.flat())
  const columns = Math.floor((maxX - minX) / CELL + ON_LINE)
  const rows = Math.floor((maxY - minY) / CELL + ON_LINE)
  const onGrid = rings.map((ring) => ring.map(([x, y]): Point => [(x - minX) / CELL, (y - minY) / CELL]))
  const heights = new Uint16Array(columns)
  let most = 0
  for (let row = 0; row < rows; row++) {
    const clear = clearCells(onGrid, row, columns)
    for (let c = 0; c < columns; c++) heights[c] = clear[c] ? (heights[c] as number) + 1 : 0
    most = Math.max(most, largestUnder(heights))
  }
  return most * CELL * CELL
}

/** 1 for every square of the row that lies inside and that no boundary crosses. */
function clearCells(rings: Rings, row: number, columns: number): Uint8Array {
  const clear = new Uint8Array(columns)
  const crossings: number[] = []
  const spans: [number, number][] = []
  for (const ring of rings) {
    let [ax, ay] = ring[ring.length - 1] as Point
    for (const [bx, by] of ring) {
      const middle = row + 0.5
      if (ay > middle !== by > middle) crossings.push(ax + ((middle - ay) / (by - ay)) * (bx - ax))
      const span = spanInRow(ax, ay, bx, by, row)
      if (span) spans.push(span)
      ax = bx
      ay = by
    }
  }
  crossings.sort((a, b) => a - b)
  for (let k = 0; k + 1 < crossings.length; k += 2) {
    const from = Math.ceil((crossings[k] as number) - 0.5)
    for (let c = Math.max(0, from); c < columns && c + 0.5 < (crossings[k + 1] as number); c++) clear[c] = 1
  }
  for (const [low, high] of spans) {
    const last = Math.ceil(high - ON_LINE) - 1
    for (let c = Math.max(0, Math.floor(low + ON_LINE)); c <= last && c < columns; c++) clear[c] = 0
  }
  return clear
}

/** From where to where the edge runs in the inside of the row, null if it does not. */
function spanInRow(ax: number, ay: number, bx: number, by: number, row: number): [number, number] | null {
  const low = Math.max(Math.min(ay, by), row + ON_LINE)
  const high = Math.min(Math.max(ay, by), row + 1 - ON_LINE)
  if (low > high) return null
  const at = (y: number) => (ay === by ? ax : ax + ((y - ay) / (by - ay)) * (bx - ax))
  const ends = ay === by ? [ax, bx] : [at(low), at(high)]
  return [Math.min(...ends), Math.max(...ends)]
}

/** The largest rectangle under a skyline, in squares: each column is pushed and popped once. */
function largestUnder(heights: Uint16Array): number {
  const open: number[] = []
  let most = 0
  for (let c = 0; c <= heights.length; c++) {
    const height = heights[c] ?? 0
    while (open.length > 0 && (heights[open.at(-1) as number] as number) >= height) {
      const top = heights[open.pop() as number] as number
      const from = open.length > 0 ? (open.at(-1) as number) + 1 : 0
      most = Math.max(most, top * (c - from))
    }
    open.push(c)
  }
  return most
}
