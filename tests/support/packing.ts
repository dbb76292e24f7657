import { type Polygon, polygonMoved, polygonOriented, type Way } from '../../src/core/geometry/index.ts'
import type { Item, PackingProblem, Placement } from '../../src/core/packing/index.ts'
import { distanceBetween, overlapArea, toJsts, uncoveredArea } from './planar.ts'

/** Builders for packing problems in tests, and a check of lays by a reference library. */

export function square(side: number): Polygon {
  return rectangle(side, side)
}

export function rectangle(width: number, height: number): Polygon {
  return [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
}

export function exactWays(turns: readonly number[], mirrors: readonly boolean[] = [false]): Way[] {
  return mirrors.flatMap((mirrored) => turns.map((turn): Way => ({ turn, mirrored, tilt: 0 })))
}

export function makeItem(
  id: string,
  outline: Polygon,
  copies: number,
  ways: readonly Way[],
  regions = 1,
): Item {
  return { id, copies, outline, optional: false, ways: Array.from({ length: regions }, () => ways) }
}

export function makeProblem(
  outline: Polygon,
  items: readonly Item[],
  forbidden: Polygon[] = [],
): PackingProblem {
  return { clearance: 0, regions: [{ id: 'region', outline, forbidden }], items }
}

/**
 * Faults of a lay, found by polygon areas of the reference library: what overlaps or sticks out by more than
 * 0.01 mm times the outline's own length. Empty means that the lay holds.
 */
export function layFaults(problem: PackingProblem, placements: readonly Placement[]): string[] {
  const faults: string[] = []
  const placed = placements.map((placement) => {
    const { outline, id } = problem.items[placement.item]!
    const polygon = polygonMoved(polygonOriented(outline, placement), placement.x, placement.y)
    return {
      id: `${id}#${placement.copy}`,
      region: placement.region,
      geometry: toJsts(polygon),
      slack: slackOf(outline),
    }
  })
  placed.forEach((a, i) => {
    const region = problem.regions[a.region]!
    if (uncoveredArea(a.geometry, toJsts(region.outline)) > a.slack) faults.push(`${a.id} sticks out`)
    for (const area of region.forbidden)
      if (overlapArea(a.geometry, toJsts(area)) > a.slack) faults.push(`${a.id} on a forbidden area`)
    for (const b of placed.slice(i + 1)) {
      if (a.region !== b.region) continue
      if (overlapArea(a.geometry, b.geometry) > Math.min(a.slack, b.slack))
        faults.push(`${a.id} over ${b.id}`)
      if (problem.clearance > 0 && distanceBetween(a.geometry, b.geometry) < problem.clearance - 0.01)
        faults.push(`${a.id} too near ${b.id}`)
    }
  })
  return faults
}

function slackOf(outline: Polygon): number {
  const length = outline.reduce((sum, [x, y], i) => {
    const [px, py] = outline.at(i - 1)!
    return sum + Math.hypot(x - px, y - py)
  }, 0)
  return length * 0.01
}
