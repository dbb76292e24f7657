import { ringsDifference } from '../../geometry/clipper.ts'
import { minkowskiSum, polygonNegated } from '../../geometry/minkowski.ts'
import { polygonArea, polygonBox } from '../../geometry/polygon.ts'
import type { Box, Point, Polygon, Rings } from '../../geometry/types.ts'
import type { Refutation } from '../answer.ts'
import { areaOf, groundArea, neededItems } from './area.ts'
import { exceeds } from './area-bounds.ts'
import { pairFigures } from './length-figures.ts'
import type { Core, Relaxed } from './relaxed.ts'
import { squareSide } from './squares.ts'

/**
 * Lemma: every packing assigns each copy to a region where it may lie, with no more area in a region than there
 * is, and no two copies that exclude each other. Two copies exclude each other in a region if every difference of
 * two positions from their domains is an overlap. No assignment, no packing; exact depth-first search. Copies are
 * taken by size, and the first prefix without an assignment is the group that cannot be placed.
 */
export function refuteTogether(relaxed: Relaxed): Refutation | null {
  const { problem } = relaxed
  const size = (item: number) => areaOf(problem, item)
  const copies = [...neededItems(problem)]
    .sort((a, b) => size(b) - size(a))
    .flatMap((item) => Array.from({ length: problem.items[item]!.copies }, () => item))
  const search = new AssignmentSearch(relaxed, size)
  for (let count = 1; count <= copies.length; count++) {
    const found = search.assigns(copies.slice(0, count))
    if (found === 'too-long') return null
    if (found === 'none')
      return {
        kind: 'group',
        items: [...new Set(copies.slice(0, count))],
        figures: {
          copies: count,
          regions: problem.regions.length,
          ...pairFigures(problem, copies.slice(0, count)),
        },
        certificate: { by: 'sharing', copies: copies.slice(0, count) },
      }
  }
  return null
}

/** Steps after which a search for an assignment is given up: some tens of milliseconds. */
const MOST_STEPS = 100_000

class AssignmentSearch {
  private readonly excluded = new Map<string, boolean>()
  private readonly ground: readonly number[]
  private steps = 0

  constructor(
    private readonly relaxed: Relaxed,
    private readonly size: (item: number) => number,
  ) {
    this.ground = relaxed.problem.regions.map((region) => groundArea(region))
  }

  assigns(copies: readonly number[]): 'some' | 'none' | 'too-long' {
    this.steps = 0
    const held: number[][] = this.ground.map(() => [])
    const used = this.ground.map(() => 0)
    const place = (k: number, from: number): boolean => {
      if (k === copies.length || ++this.steps > MOST_STEPS) return true
      const item = copies[k] as number
      for (let r = from; r < held.length; r++) {
        const inRegion = held[r] as number[]
        const before = used[r] as number
        const after = before + this.size(item)
        if (exceeds(after, this.ground[r] as number) || !this.relaxed.mayLieIn(item, r)) continue
        if (inRegion.some((other) => this.exclude(other, item, r))) continue
        inRegion.push(item)
        used[r] = after
        // Equal copies take regions in order: any packing can be renamed so.
        if (place(k + 1, copies[k + 1] === item ? r : 0)) return true
        inRegion.pop()
        used[r] = before
      }
      return false
    }
    const found = place(0, 0)
    if (this.steps > MOST_STEPS) return 'too-long'
    return found ? 'some' : 'none'
  }

  private exclude(a: number, b: number, region: number): boolean {
    const key = a < b ? `${a} ${b} ${region}` : `${b} ${a} ${region}`
    let excluded = this.excluded.get(key)
    if (excluded === undefined) {
      excluded = itemsExclude(this.relaxed, a, b, region)
      this.excluded.set(key, excluded)
    }
    return excluded
  }
}

/** More pairs of cores than this are not worth their time in an early proof. */
const MOST_PAIRS = 64

/** True if it is proved that the two items cannot both lie in the region. */
function itemsExclude(relaxed: Relaxed, a: number, b: number, region: number): boolean {
  const coresOfA = relaxed.cores(a, region)
  const coresOfB = relaxed.cores(b, region)
  if (!coresOfA || !coresOfB || coresOfA.length * coresOfB.length > MOST_PAIRS) return false
  return coresOfA.every((p) => coresOfB.every((q) => coresExclude(relaxed, p, q, region)))
}

/** True if every difference of positions from the two domains is an overlap. */
function coresExclude(relaxed: Relaxed, p: Core, q: Core, region: number): boolean {
  const domainOfP = relaxed.domain(region, p).filter(isOuter)
  const domainOfQ = relaxed.domain(region, q).filter(isOuter)
  if (domainOfP.length === 0 || domainOfQ.length === 0) return true
  if (!differencesMayOverlap(boundsOf(domainOfP), boundsOf(domainOfQ), p, q, relaxed.problem.clearance))
    return false
  const overlap = relaxed.overlap(p, q)
  if (someDifferenceIsFree(domainOfP.flat(), domainOfQ.flat(), overlap)) return false
  return domainOfP.every((from) =>
    domainOfQ.every((to) => ringsDifference(minkowskiSum(to, polygonNegated(from)), overlap).length === 0),
  )
}

function isOuter(ring: Polygon): boolean {
  return polygonArea(ring) > 0
}

/** Quick no: two corners of the domains are positions that do not overlap. */
function someDifferenceIsFree(from: readonly Point[], to: readonly Point[], overlap: Rings): boolean {
  return from.some(([px, py]) => to.some(([qx, qy]) => squareSide(overlap, qx - px, qy - py, 0) !== 'inside'))
}

/** Quick no: the extreme differences lie outside the bounds of all overlaps. */
function differencesMayOverlap(from: Box, to: Box, p: Core, q: Core, clearance: number): boolean {
  return (
    to.maxX - from.minX <= p.box.maxX - q.box.minX + clearance &&
    from.maxX - to.minX <= q.box.maxX - p.box.minX + clearance &&
    to.maxY - from.minY <= p.box.maxY - q.box.minY + clearance &&
    from.maxY - to.minY <= q.box.maxY - p.box.minY + clearance
  )
}

function boundsOf(rings: Rings): Box {
  return polygonBox(rings.flat())
}
