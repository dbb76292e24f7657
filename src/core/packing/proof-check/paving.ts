import type { Mm } from '../../base/units.ts'
import type { Box } from '../../geometry/types.ts'
import { type ClashSet, sideOfSquare } from './clash-set.ts'

/** Counts what a re-check does, in sets compared, and ends it by `OutOfWork` when that is too much. */
export class Work {
  /** True once something was left undecided because it would have to be cut too fine: a failure is then no disproof. */
  unclear = false

  constructor(private left: number) {}

  spend(amount: number): void {
    this.left -= amount
    if (this.left < 0) throw new OutOfWork()
  }
}

export class OutOfWork extends Error {}

/**
 * True if every point of the box is inside one of the sets: proved by cutting the box until each part lies inside a
 * single one. Parts with both sides below `least` are not cut; the answer is then false, which proves nothing.
 */
export function isCovered(box: Box, sets: readonly ClashSet[], least: Mm, work: Work): boolean {
  const near = nearSets(box, sets, work)
  if (near === 'inside') return true
  if (near.length === 0 || nearSets(middleOf(box), near, work) !== 'inside') return false
  if (isSmall(box, least)) {
    work.unclear = true
    return false
  }
  return halvesOf(box).every((half) => isCovered(half, near, least, work))
}

/** Boxes, cut no finer than `least`, that together hold every point of the box which is in none of the sets. */
export function uncovered(box: Box, sets: readonly ClashSet[], least: Mm, work: Work): Box[] {
  const near = nearSets(box, sets, work)
  if (near === 'inside') return []
  if (near.length === 0 || isSmall(box, least)) return [box]
  return halvesOf(box).flatMap((half) => uncovered(half, near, least, work))
}

/** Positions of one copy: a box of them, and the sets that rule some out. */
export interface Positions {
  readonly box: Box
  readonly ruledOut: readonly ClashSet[]
}

/**
 * True if every two positions, one of each, are ruled out or differ by a point of one of the sets: proved by cutting
 * the boxes in turn. Like `isCovered` otherwise.
 */
export function alwaysDiffer(
  first: Positions,
  second: Positions,
  sets: readonly ClashSet[],
  least: Mm,
  work: Work,
): boolean {
  const difference = differenceOf(first.box, second.box)
  const near = nearSets(difference, sets, work)
  const ofFirst = near === 'inside' ? near : nearSets(first.box, first.ruledOut, work)
  const ofSecond = ofFirst === 'inside' ? ofFirst : nearSets(second.box, second.ruledOut, work)
  if (near === 'inside' || ofFirst === 'inside' || ofSecond === 'inside') return true
  if (near.length + ofFirst.length + ofSecond.length === 0) return false
  const [p, q] = [middleOf(first.box), middleOf(second.box)]
  const free = (box: Box, among: readonly ClashSet[]) => nearSets(box, among, work) !== 'inside'
  if (free(p, ofFirst) && free(q, ofSecond) && free(differenceOf(p, q), near)) return false
  if (isSmall(first.box, least) && isSmall(second.box, least)) {
    work.unclear = true
    return false
  }
  const [a, b] = [
    { box: first.box, ruledOut: ofFirst },
    { box: second.box, ruledOut: ofSecond },
  ]
  return longerSide(a.box) >= longerSide(b.box)
    ? halvesOf(a.box).every((box) => alwaysDiffer({ ...a, box }, b, near, least, work))
    : halvesOf(b.box).every((box) => alwaysDiffer(a, { ...b, box }, near, least, work))
}

/** Every point of b less every point of a. */
function differenceOf(a: Box, b: Box): Box {
  return { minX: b.minX - a.maxX, minY: b.minY - a.maxY, maxX: b.maxX - a.minX, maxY: b.maxY - a.minY }
}

function longerSide({ minX, minY, maxX, maxY }: Box): Mm {
  return Math.max(maxX - minX, maxY - minY)
}

/** The sets that the box may meet, or `inside` if it lies in one of them. */
function nearSets(
  { minX, minY, maxX, maxY }: Box,
  sets: readonly ClashSet[],
  work: Work,
): readonly ClashSet[] | 'inside' {
  work.spend(sets.length)
  const near: ClashSet[] = []
  for (const set of sets) {
    const side = sideOfSquare(set, (minX + maxX) / 2, (minY + maxY) / 2, (maxX - minX) / 2, (maxY - minY) / 2)
    if (side === 1) return 'inside'
    if (side === 0) near.push(set)
  }
  return near
}

function isSmall({ minX, minY, maxX, maxY }: Box, least: Mm): boolean {
  return maxX - minX <= least && maxY - minY <= least
}

function middleOf({ minX, minY, maxX, maxY }: Box): Box {
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2]
  return { minX: x, minY: y, maxX: x, maxY: y }
}

function halvesOf(box: Box): readonly [Box, Box] {
  const { x, y } = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }
  return box.maxX - box.minX >= box.maxY - box.minY
    ? [
        { ...box, maxX: x },
        { ...box, minX: x },
      ]
    : [
        { ...box, maxY: y },
        { ...box, minY: y },
      ]
}
