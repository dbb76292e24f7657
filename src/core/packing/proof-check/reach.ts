import type { Mm } from '../../base/units.ts'
import type { Box, Point, Polygon } from '../../geometry/types.ts'
import type { PackingProblem, Region } from '../problem.ts'
import { clipped } from './clash-set.ts'
import { counterClockwise } from './convex-cover.ts'
import { groundArea } from './enough-area.ts'
import { areaWhere } from './exact-area.ts'
import { hasNoPlaceIn } from './no-place.ts'
import { uncovered, type Work } from './paving.ts'
import { boundsOf, Poses } from './poses.ts'

/** Squares to the longer side of a region by which reach is told: coarse first. */
const SQUARES = [64, 256, 1024]

/**
 * True if the items, all copies of each, may lie in these regions only, and have more area than they can reach there.
 * What is out of reach is counted by squares that no item at any position can meet: so it is never too much.
 */
export function exceedsReach(
  problem: PackingProblem,
  items: readonly number[],
  regions: readonly number[],
  work: Work,
): boolean {
  const asked = items.map((i) => problem.items[i]!)
  const bound = items.every((i) =>
    problem.regions.every((_, r) => regions.includes(r) || hasNoPlaceIn(problem, i, r, work)),
  )
  const needed = asked.reduce(
    (sum, { outline, copies }) => sum + copies * areaWhere([[outline]], ([inside]) => inside === true),
    0,
  )
  const reached = (squares: number) =>
    regions.reduce((sum, r) => {
      const region = problem.regions[r] as Region
      return sum + groundArea(region) - outOfReach(problem, items, r, squares, work)
    }, 0)
  // Squares overstate what can be reached.
  work.unclear = bound
  return bound && SQUARES.some((squares) => needed > reached(squares) * (1 + 1e-9))
}

function outOfReach(
  problem: PackingProblem,
  items: readonly number[],
  r: number,
  squares: number,
  work: Work,
): number {
  const region = problem.regions[r] as Region
  const frame = boundsOf(region.outline)
  const side = Math.max(frame.maxX - frame.minX, frame.maxY - frame.minY) / squares
  const raster = new Raster(frame, side)
  for (const item of items) {
    const poses = new Poses(problem.items[item]!, problem.regions, work)
    for (const pose of poses.all(r)) {
      // What a range of turns can reach is more than its common part: taken as everything.
      if (pose.way.tilt > 0) return 0
      for (const box of uncovered(pose.box, pose.ruledOut, side, work))
        for (const part of pose.parts) work.spend(raster.mark(part, box))
    }
  }
  work.spend(raster.columns * raster.rows)
  return raster.unmarked().reduce((sum, square) => sum + groundIn(region, square), 0)
}

/** Area of the region's ground in a square, or less: forbidden areas that cross each other are taken off twice. */
function groundIn({ outline, forbidden }: Region, square: Box): number {
  const lost = forbidden.reduce((sum, area) => sum + areaIn(area, square), 0)
  return Math.max(0, areaIn(outline, square) - lost)
}

function areaIn(polygon: Polygon, { minX, minY, maxX, maxY }: Box): number {
  let left = counterClockwise(polygon)
  const sides = [
    [1, 0, maxX],
    [-1, 0, -minX],
    [0, 1, maxY],
    [0, -1, -minY],
  ] as const
  for (const [nx, ny, c] of sides) left = left.length > 0 ? clipped(left, nx, ny, c) : left
  return left.reduce((sum, [ax, ay], i) => {
    const [bx, by] = left[(i + 1) % left.length] as Point
    return sum + ((ax - minX) * (by - minY) - (bx - minX) * (ay - minY)) / 2
  }, 0)
}

/** Squares of a region's bounds, each marked once something may reach it. */
class Raster {
  readonly columns: number
  readonly rows: number
  private readonly marked: Uint8Array

  constructor(
    private readonly frame: Box,
    private readonly side: Mm,
  ) {
    this.columns = Math.ceil((frame.maxX - frame.minX) / side)
    this.rows = Math.ceil((frame.maxY - frame.minY) / side)
    this.marked = new Uint8Array(this.columns * this.rows)
  }

  /** Marks all squares that the convex part meets when moved by some point of the box; how many rows that were. */
  mark(part: Polygon, box: Box): number {
    const { minY, maxY } = boundsOf(part)
    const first = Math.max(0, this.rowOf(minY + box.minY) - 1)
    const last = Math.min(this.rows - 1, this.rowOf(maxY + box.maxY) + 1)
    for (let row = first; row <= last; row++) {
      const low = this.frame.minY + row * this.side
      const slab = clipped(
        clipped(part, 0, 1, low + this.side - box.minY + SEAM),
        0,
        -1,
        box.maxY - low + SEAM,
      )
      if (slab.length === 0) continue
      const { minX, maxX } = boundsOf(slab)
      const from = Math.max(0, Math.floor((minX + box.minX - SEAM - this.frame.minX) / this.side))
      const to = Math.floor((maxX + box.maxX + SEAM - this.frame.minX) / this.side)
      this.marked.fill(1, row * this.columns + from, row * this.columns + Math.min(this.columns - 1, to) + 1)
    }
    return Math.max(1, last - first)
  }

  private rowOf(y: Mm): number {
    return Math.floor((y - this.frame.minY) / this.side)
  }

  unmarked(): Box[] {
    const boxes: Box[] = []
    this.marked.forEach((mark, at) => {
      if (mark) return
      const minX = this.frame.minX + (at % this.columns) * this.side
      const minY = this.frame.minY + Math.floor(at / this.columns) * this.side
      boxes.push({ minX, minY, maxX: minX + this.side, maxY: minY + this.side })
    })
    return boxes
  }
}

/** Widens what is marked by more than doubles may have rounded. */
const SEAM: Mm = 1e-6
