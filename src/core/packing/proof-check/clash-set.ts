import type { Mm } from '../../base/units.ts'
import type { Box, Point, Polygon } from '../../geometry/types.ts'

/** A convex open set as half-planes, nx·x + ny·y < c, and its bounds. */
export interface ClashSet {
  /** nx, ny, c of one half-plane after the other, (nx, ny) of length 1. */
  readonly sides: Float64Array
  readonly box: Box
}

/** So far inside a half-plane a point must be to count: more than rounding at some metres, far less than any proof goes by. */
const GUARD: Mm = 1e-7

/**
 * Translations of `moving` that bring its inside onto that of `fixed`, or nearer than `clearance`: the Minkowski sum
 * of one and the other's mirror image, both convex. Its half-planes have the normals of both, each at the sum of the
 * support functions (Schneider, "Convex bodies: the Brunn–Minkowski theory", 1.7). The disc of the clearance is a
 * polygon inside it.
 */
export function clashSet(fixed: Polygon, moving: Polygon, clearance: Mm): ClashSet {
  const [a, b] = [partOf(fixed), partOf(moving)]
  const disc = clearance > 0 ? DISC_NORMALS : NONE
  // What the disc's polygon reaches at least in any direction.
  const grown = clearance * Math.cos(Math.PI / DISC_CORNERS)
  const sides = new Float64Array(a.sides.length + b.sides.length + disc.length)
  let at = 0
  const add = (nx: number, ny: number, c: number) => {
    sides[at++] = nx
    sides[at++] = ny
    sides[at++] = c + grown
  }
  for (let k = 0; k < a.sides.length; k += 3) {
    const [nx, ny] = [a.sides[k] as number, a.sides[k + 1] as number]
    add(nx, ny, (a.sides[k + 2] as number) + support(b.xy, -nx, -ny))
  }
  for (let k = 0; k < b.sides.length; k += 3) {
    const [nx, ny] = [b.sides[k] as number, b.sides[k + 1] as number]
    add(-nx, -ny, (b.sides[k + 2] as number) + support(a.xy, -nx, -ny))
  }
  for (let k = 0; k < disc.length; k += 3) {
    const [nx, ny] = [disc[k] as number, disc[k + 1] as number]
    add(nx, ny, support(a.xy, nx, ny) + support(b.xy, -nx, -ny))
  }
  const box = {
    minX: a.box.minX - b.box.maxX - clearance,
    minY: a.box.minY - b.box.maxY - clearance,
    maxX: a.box.maxX - b.box.minX + clearance,
    maxY: a.box.maxY - b.box.minY + clearance,
  }
  return { sides, box }
}

/** A convex polygon, or a point, with its own half-planes as in `ClashSet`. */
interface Part extends ClashSet {
  readonly xy: Float64Array
}

const parts = new WeakMap<Polygon, Part>()

/** Worked out once for each polygon: it takes part in many clash sets. */
function partOf(polygon: Polygon): Part {
  const known = parts.get(polygon)
  if (known) return known
  const xy = new Float64Array(polygon.flat())
  const normals = normalsOf(polygon)
  const sides = new Float64Array(normals.flatMap(([nx, ny]) => [nx, ny, support(xy, nx, ny)]))
  const box = {
    minX: -support(xy, -1, 0),
    minY: -support(xy, 0, -1),
    maxX: support(xy, 1, 0),
    maxY: support(xy, 0, 1),
  }
  const part = { xy, sides, box }
  parts.set(polygon, part)
  return part
}

/** Sides of the polygon that stands for the disc of a clearance: it loses 0.05 % of it. */
const DISC_CORNERS = 96
const NONE = new Float64Array(0)
const DISC_NORMALS = new Float64Array(
  Array.from({ length: DISC_CORNERS }, (_, k) => {
    const angle = (2 * Math.PI * k) / DISC_CORNERS
    return [Math.cos(angle), Math.sin(angle), 0]
  }).flat(),
)

function normalsOf(polygon: Polygon): readonly Point[] {
  if (polygon.length < 3) return []
  return polygon.flatMap(([ax, ay], i): Point[] => {
    const [bx, by] = polygon[(i + 1) % polygon.length] as Point
    const length = Math.hypot(bx - ax, by - ay)
    return length > 0 ? [[(by - ay) / length, (ax - bx) / length]] : []
  })
}

/** How far the points reach in a direction. */
function support(xy: Float64Array, nx: number, ny: number): number {
  let most = Number.NEGATIVE_INFINITY
  for (let k = 0; k < xy.length; k += 2) {
    const reach = nx * (xy[k] as number) + ny * (xy[k + 1] as number)
    if (reach > most) most = reach
  }
  return most
}

/** 1: the square round (x, y) lies inside the set; −1: it misses it; 0: neither is seen. */
export function sideOfSquare({ sides, box }: ClashSet, x: Mm, y: Mm, halfX: Mm, halfY: Mm): 1 | 0 | -1 {
  if (x - halfX >= box.maxX || x + halfX <= box.minX || y - halfY >= box.maxY || y + halfY <= box.minY)
    return -1
  let inside = true
  for (let k = 0; k < sides.length; k += 3) {
    const nx = sides[k] as number
    const ny = sides[k + 1] as number
    const at = nx * x + ny * y - (sides[k + 2] as number)
    const half = Math.abs(nx) * halfX + Math.abs(ny) * halfY
    if (at - half >= 0) return -1
    if (at + half > -GUARD) inside = false
  }
  return inside ? 1 : 0
}

/** What of a convex polygon lies deeper than `margin` inside it, or null. */
export function shrunkPart(part: Polygon, margin: Mm): Polygon | null {
  if (margin === 0) return part
  let left: Polygon = part
  part.forEach((a, i) => {
    const b = part[(i + 1) % part.length] as Point
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length === 0) return
    const [nx, ny] = [(b[1] - a[1]) / length, (a[0] - b[0]) / length]
    left = clipped(left, nx, ny, nx * a[0] + ny * a[1] - margin)
  })
  return left.length < 3 ? null : left
}

/** The part of a polygon with nx·x + ny·y ≤ c (Sutherland and Hodgman 1974). */
export function clipped(polygon: Polygon, nx: number, ny: number, c: number): Polygon {
  return polygon.flatMap((a, i): Point[] => {
    const b = polygon[(i + 1) % polygon.length] as Point
    const [da, db] = [nx * a[0] + ny * a[1] - c, nx * b[0] + ny * b[1] - c]
    const kept: Point[] = da <= 0 ? [a] : []
    if (da < 0 !== db < 0 && da !== db && da !== 0 && db !== 0) {
      const t = da / (da - db)
      kept.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])
    }
    return kept
  })
}
