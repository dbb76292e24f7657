import type { Slices } from '../../base/slices.ts'
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
 * taken by size, and the first prefix without an assignment is the group that cannot be placed. Pauses at every question
 * to the polygons, and given up where there are too many.
 */
export function* refuteTogether(relaxed: Relaxed): Slices<Refutation | null> {
  const { problem } = relaxed
  const size = (item: number) => areaOf(problem, item)
  const copies = [...neededItems(problem)]
    .sort((a, b) => size(b) - size(a))
    .flatMap((item) => Array.from({ length: problem.items[item]!.copies }, () => item))
  const search = new AssignmentSearch(relaxed, size, copies)
  if ((yield* search.assigns()) !== 'none') return null
  const first = copies.slice(0, search.deepest + 1)
  return {
    kind: 'group',
    items: [...new Set(first)],
    figures: { copies: first.length, regions: problem.regions.length, ...pairFigures(problem, first) },
    certificate: { by: 'sharing', copies: first },
  }
}

/** Steps, and questions to the polygons, after which a search for an assignment is given up. */
const MOST_STEPS = 100_000
const MOST_QUESTIONS = 4000

/** Steps between two pauses where all is known. */
const PAUSE_STEPS = 1000

class AssignmentSearch {
  /** The most copies, from the first, that were ever assigned together. */
  deepest = 0
  private readonly excluded = new Map<string, boolean>()
  private readonly lies = new Map<string, boolean>()
  private readonly ground: readonly number[]
  private readonly held: readonly number[][]
  private readonly used: number[]
  private steps = 0
  private questions = 0

  constructor(
    private readonly relaxed: Relaxed,
    private readonly size: (item: number) => number,
    private readonly copies: readonly number[],
  ) {
    this.ground = relaxed.problem.regions.map((region) => groundArea(region))
    this.held = this.ground.map(() => [])
    this.used = this.ground.map(() => 0)
  }

  *assigns(): Slices<'some' | 'none' | 'too-long'> {
    const found = yield* this.place(0, 0)
    if (this.isTooLong) return 'too-long'
    return found ? 'some' : 'none'
  }

  private get isTooLong(): boolean {
    return this.steps > MOST_STEPS || this.questions > MOST_QUESTIONS
  }

  /** Assigns the copies from the k-th on, that one to a region from `from` on. True also once it takes too long. */
  private *place(k: number, from: number): Slices<boolean> {
    const { copies, held, used } = this
    this.deepest = Math.max(this.deepest, k)
    if (k === copies.length) return true
    if (++this.steps % PAUSE_STEPS === 0) yield
    const item = copies[k] as number
    for (let r = from; r < held.length; r++) {
      if (this.isTooLong) return true
      const before = used[r] as number
      const after = before + this.size(item)
      if (exceeds(after, this.ground[r] as number) || !(yield* this.mayJoin(item, r))) continue
      held[r]?.push(item)
      used[r] = after
      // Equal copies take regions in order: any packing can be renamed so.
      if (yield* this.place(k + 1, copies[k + 1] === item ? r : 0)) return true
      held[r]?.pop()
      used[r] = before
    }
    return false
  }

  private *mayJoin(item: number, r: number): Slices<boolean> {
    if (!(yield* this.mayLie(item, r))) return false
    for (const other of this.held[r] as readonly number[])
      if (yield* this.exclude(other, item, r)) return false
    return true
  }

  private *mayLie(item: number, r: number): Slices<boolean> {
    return yield* this.asked(this.lies, `${item} ${r}`, () => this.relaxed.mayLieIn(item, r))
  }

  private *exclude(a: number, b: number, region: number): Slices<boolean> {
    const key = a < b ? `${a} ${b} ${region}` : `${b} ${a} ${region}`
    return yield* this.asked(this.excluded, key, () => itemsExclude(this.relaxed, a, b, region))
  }

  private *asked(known: Map<string, boolean>, key: string, ask: () => boolean): Slices<boolean> {
    let answer = known.get(key)
    if (answer === undefined) {
      yield
      this.questions++
      answer = ask()
      known.set(key, answer)
    }
    return answer
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
