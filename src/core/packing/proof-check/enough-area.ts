import type { Mm } from '../../base/units.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import type { Item, PackingProblem, Region } from '../problem.ts'
import { counterClockwise } from './convex-cover.ts'
import { areaWhere, exactTwiceArea } from './exact-area.ts'

/** What rounding of doubles may have changed in a sum of areas, as a share of it, generously. */
const NOISE = 1e-11

/** True if the items, all copies of each, have more area than the regions that they may lie in. */
export function exceedsArea(problem: PackingProblem, items: readonly number[]): boolean {
  const asked = items.map((i) => problem.items[i] as Item)
  const regions = problem.regions.filter((_, r) => asked.some(({ ways }) => (ways[r] ?? []).length > 0))
  const plain = problem.clearance === 0 && regions.every(({ forbidden }) => forbidden.length === 0)
  if (plain) {
    const needed = asked.reduce(
      (sum, { outline, copies }) => sum + BigInt(copies) * exactTwiceArea(outline),
      0n,
    )
    return needed > regions.reduce((sum, { outline }) => sum + exactTwiceArea(outline), 0n)
  }
  const half = problem.clearance / 2
  const copies = asked.reduce((sum, item) => sum + item.copies, 0)
  const needed = asked.reduce((sum, { outline, copies: n }) => sum + n * grownArea(outline, half), 0)
  const available = regions.reduce(
    (sum, region) => sum + groundArea(region) + grownBy(region, half, copies),
    0,
  )
  return needed > available * (1 + NOISE)
}

/** Area of a region without what is forbidden in it. */
export function groundArea({ outline, forbidden }: Region): number {
  return areaWhere([[outline], forbidden], ([inside, taboo]) => inside === true && taboo !== true)
}

/** The outline, a rectangle along each edge, and a fan with its arc's chords at each corner: less than the outline grown. */
function grownArea(outline: Polygon, margin: Mm): number {
  const ring = counterClockwise(outline)
  if (margin === 0) return areaWhere([[ring]], ([inside]) => inside === true)
  const grown = ring.flatMap((b, i): Polygon[] => {
    const [a, c] = [ring[(i + ring.length - 1) % ring.length] as Point, ring[(i + 1) % ring.length] as Point]
    const [n1, n2] = [outward(a, b, margin), outward(b, c, margin)]
    const strip: Polygon = [b, plus(b, n2), plus(c, n2), c]
    return [strip, fan(b, n1, n2)]
  })
  return areaWhere([[ring, ...grown.filter((part) => part.length > 2)]], ([inside]) => inside === true)
}

const FAN_STEP = Math.PI / 48

/** Sector at a corner between two outward normals; empty at a corner that points inwards. */
function fan(corner: Point, from: Point, to: Point): Polygon {
  const angle = Math.atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1])
  if (!(angle > 0)) return []
  const steps = Math.ceil(angle / FAN_STEP)
  const arc = Array.from({ length: steps + 1 }, (_, k): Point => {
    const [cos, sin] = [Math.cos((angle * k) / steps), Math.sin((angle * k) / steps)]
    return plus(corner, [from[0] * cos - from[1] * sin, from[0] * sin + from[1] * cos])
  })
  return [corner, ...arc]
}

/** Area added by growing each part of the region's ground that holds a copy (Steiner): L·m + π·m² a part. */
function grownBy({ outline, forbidden }: Region, margin: Mm, copies: number): number {
  const length = [outline, ...forbidden].reduce((sum, ring) => sum + lengthOf(ring), 0)
  return length * margin + (forbidden.length === 0 ? 1 : copies) * Math.PI * margin * margin
}

function lengthOf(ring: Polygon): Mm {
  return ring.reduce((sum, [ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length] as Point
    return sum + Math.hypot(bx - ax, by - ay)
  }, 0)
}

function outward([ax, ay]: Point, [bx, by]: Point, margin: Mm): Point {
  const length = Math.hypot(bx - ax, by - ay)
  return length === 0 ? [0, 0] : [((by - ay) / length) * margin, ((ax - bx) / length) * margin]
}

function plus([ax, ay]: Point, [bx, by]: Point): Point {
  return [ax + bx, ay + by]
}
