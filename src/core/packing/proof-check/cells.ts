import type { Deg, Mm } from '../../base/units.ts'
import type { Box } from '../../geometry/types.ts'
import type { PackingProblem } from '../problem.ts'
import type { ClashSet } from './clash-set.ts'
import { isCovered, type Work } from './paving.ts'
import { type Pose, Poses } from './poses.ts'
import { overlapsOf } from './sharing.ts'

/** Cell (i, j) of a pose: the positions within half a step of that point of its region's lattice. */
interface Cell {
  readonly pose: Pose
  readonly i: number
  readonly j: number
}

/** A cell is cut into parts this many times smaller before it counts as not covered. */
const FINER = 16

/**
 * True if there is no choice of a cell for each copy, the index of its item, no two of which always overlap. Every
 * cell that may hold a position is listed, and lists are gone through copy by copy, the shortest first.
 */
export function haveNoCells(
  problem: PackingProblem,
  copies: readonly number[],
  step: Mm,
  tilt: Deg,
  work: Work,
): boolean {
  const listOf = new Map<number, readonly Cell[]>()
  for (const item of new Set(copies)) listOf.set(item, cellsOf(problem, item, step, tilt, work))
  const conflicts = new Conflicts(problem.clearance, step, work)

  const choose = (left: readonly { readonly item: number; readonly cells: readonly Cell[] }[]): boolean => {
    if (left.length === 0) return true
    const self = left.reduce((a, b) => (b.cells.length < a.cells.length ? b : a))
    const others = left.filter((copy) => copy !== self)
    return self.cells.some((cell, k) => {
      const next = others.map(({ item, cells }) => ({
        item,
        // Equal copies can be swapped: what has failed for one need not be tried for the other.
        cells: (item === self.item ? cells.filter((c) => self.cells.indexOf(c) >= k) : cells).filter(
          (other) => !conflicts.between(cell, other),
        ),
      }))
      return next.every(({ cells }) => cells.length > 0) && choose(next)
    })
  }
  // Cells are told apart less finely than by whoever found that there is no choice: one found here is no disproof.
  work.unclear = true
  return !choose(copies.map((item) => ({ item, cells: listOf.get(item) as readonly Cell[] })))
}

function cellsOf(
  { items, regions }: PackingProblem,
  item: number,
  step: Mm,
  tilt: Deg,
  work: Work,
): readonly Cell[] {
  const poses = new Poses(items[item]!, regions, work)
  const all = regions.flatMap((_, r) => poses.all(r).flatMap((pose) => poses.noWider(pose, tilt)))
  return all.flatMap((pose) => {
    const { minX, minY, maxX, maxY } = pose.box
    const cells: Cell[] = []
    for (let j = 0; j <= Math.ceil((maxY - minY) / step); j++)
      for (let i = 0; i <= Math.ceil((maxX - minX) / step); i++) {
        const cell = { pose, i, j }
        if (
          !isCovered(
            squareRound(minX + i * step, minY + j * step, step / 2),
            pose.ruledOut,
            step / FINER,
            work,
          )
        )
          cells.push(cell)
      }
    return cells
  })
}

/** Widens every square, so that no position is lost between two by rounding. */
const SEAM: Mm = 1e-6

function squareRound(x: Mm, y: Mm, half: Mm): Box {
  const side = half + SEAM
  return { minX: x - side, minY: y - side, maxX: x + side, maxY: y + side }
}

/** Which two cells always overlap; all cells of a region lie on one lattice, so it goes by their difference. */
class Conflicts {
  private readonly overlaps = new Map<
    Pose,
    Map<Pose, { sets: readonly ClashSet[]; at: Map<number, boolean> }>
  >()

  constructor(
    private readonly clearance: Mm,
    private readonly step: Mm,
    private readonly work: Work,
  ) {}

  between(a: Cell, b: Cell): boolean {
    if (a.pose.region !== b.pose.region) return false
    this.work.spend(1)
    const { sets, at } = this.of(a.pose, b.pose)
    const [dx, dy] = [b.i - a.i, b.j - a.j]
    const key = dx * 65_536 + dy
    const known = at.get(key)
    if (known !== undefined) return known
    const square = squareRound(dx * this.step, dy * this.step, this.step)
    const found = isCovered(square, sets, this.step / FINER, this.work)
    at.set(key, found)
    return found
  }

  private of(p: Pose, q: Pose) {
    const ofP = this.overlaps.get(p) ?? new Map()
    this.overlaps.set(p, ofP)
    const found = ofP.get(q) ?? { sets: overlapsOf(p, q, this.clearance), at: new Map<number, boolean>() }
    ofP.set(q, found)
    return found
  }
}
