import type { Point } from '../../geometry/types.ts'
import type { PackingProblem } from '../problem.ts'
import { clashSet } from './clash-set.ts'
import { isCovered, type Work } from './paving.ts'
import { Poses } from './poses.ts'

/** Positions are cut no finer than this, and turns no finer than that: a proof that needs more is not followed. */
const FINEST = 1e-3
const NARROWEST = 1e-3

/** True if every placement of the item in any region is ruled out. */
export function hasNoPlace(problem: PackingProblem, item: number, work: Work): boolean {
  return problem.regions.every((_, region) => hasNoPlaceIn(problem, item, region, work))
}

/** The same of one region. */
export function hasNoPlaceIn(problem: PackingProblem, item: number, region: number, work: Work): boolean {
  return coversAPoint(problem, item, region, [], work)
}

/** True if every placement of the item in the region is ruled out or has one of the points inside the item. */
export function coversAPoint(
  { items, regions }: PackingProblem,
  index: number,
  region: number,
  points: readonly Point[],
  work: Work,
): boolean {
  const item = items[index]
  if (!item) return false
  const poses = new Poses(item, regions, work)
  const open = [...poses.all(region)]
  for (let pose = open.pop(); pose !== undefined; pose = open.pop()) {
    const { parts, way, box } = pose
    const covering = points.flatMap((point) => parts.map((part) => clashSet([point], part, 0)))
    // Nothing finer than what the range of turns leaves unclear anyway.
    const least = way.tilt === 0 ? FINEST : Math.max(FINEST, way.tilt)
    if (isCovered(box, [...pose.ruledOut, ...covering], least, work)) continue
    if (way.tilt > 0) work.unclear = true
    if (way.tilt < NARROWEST) return false
    open.push(...poses.halves(pose))
  }
  return true
}
