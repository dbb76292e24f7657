import type { Mm } from '../../base/units.ts'
import type { Point, Polygon } from '../../geometry/types.ts'

/*
 * Open sets by convex parts. The insides of the parts together are the inside of the set, so the parts must overlap
 * where they meet: ears cut off the outline (Meisters 1975), and over every cut a kite that reaches into both sides.
 * A part too few is never a mistake: less is then known to be in the set.
 */

/** Counter-clockwise convex polygons whose insides together are the inside of a simple polygon. */
export function coverOf(polygon: Polygon): readonly Polygon[] {
  const ring = withoutStraightCorners(counterClockwise(polygon))
  if (ring.length < 3) return []
  if (ring.every((_, i) => leftOf(ring, i, i + 1, i + 2))) return [ring]
  return partsAndKites(ring, triangulate(ring))
}

/** What lies outside a polygon: rectangles on its hull's far sides, and the parts of its pockets. */
export interface Outside {
  readonly beyond: readonly Polygon[]
  readonly pockets: readonly Polygon[]
}

/** The same for all that lies outside the polygon, up to `reach` from its convex hull. */
export function coverOfOutside(polygon: Polygon, reach: Mm): Outside {
  const ring = withoutStraightCorners(counterClockwise(polygon))
  const hull = hullIndices(ring)
  const ends = hull.map((a, k) => [a, hull[(k + 1) % hull.length] as number] as const)
  return {
    beyond: ends.map(([a, b]) => halfPlane(ring[a] as Point, ring[b] as Point, reach)),
    pockets: ends.flatMap(([a, b]) => pocketParts(ring, a, b)),
  }
}

/** Parts of the pocket between two neighbours of the hull, and a kite over the hull's edge that closes it. */
function pocketParts(ring: Polygon, a: number, b: number): readonly Polygon[] {
  const [from, to] = [ring[a] as Point, ring[b] as Point]
  const count = (b - a + ring.length) % ring.length
  if (count === 1) return []
  const pocket = Array.from(
    { length: count + 1 },
    (_, i) => ring[(b - i + ring.length) % ring.length] as Point,
  )
  const triangles = triangulate(pocket)
  const atLid = triangles.find((corners) => corners.includes(0) && corners.includes(count))
  const apex = atLid?.find((i) => i !== 0 && i !== count)
  const [ux, uy] = [to[0] - from[0], to[1] - from[1]]
  const outer: Point = [(from[0] + to[0]) / 2 + uy / 2, (from[1] + to[1]) / 2 - ux / 2]
  const lid = apex === undefined ? [] : kite(from, to, outer, pocket[apex] as Point)
  return [...partsAndKites(pocket, triangles), ...lid]
}

/** A rectangle on the right of the line from a to b that stands for all there is on that side. */
function halfPlane([ax, ay]: Point, [bx, by]: Point, reach: Mm): Polygon {
  const length = Math.hypot(bx - ax, by - ay)
  const [ux, uy] = [((bx - ax) / length) * reach, ((by - ay) / length) * reach]
  return [
    [bx + ux, by + uy],
    [ax - ux, ay - uy],
    [ax - ux + uy, ay - uy - ux],
    [bx + ux + uy, by + uy - ux],
  ]
}

export { halfPlane as rightOfLine }

export function counterClockwise(polygon: Polygon): Polygon {
  let twice = 0
  const [ox, oy] = polygon[0] as Point
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length] as Point
    twice += (ax - ox) * (by - oy) - (bx - ox) * (ay - oy)
  })
  return twice < 0 ? [...polygon].reverse() : polygon
}

type Triangle = readonly [number, number, number]

/** Less than this off the line through its neighbours, a corner is none: far below the guard of half-plane.ts. */
const STRAIGHT: Mm = 1e-8

function withoutStraightCorners(ring: Polygon): Polygon {
  return ring.filter((p, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as Point
    const b = ring[(i + 1) % ring.length] as Point
    return Math.abs(turn(a, p, b)) > STRAIGHT * Math.hypot(b[0] - a[0], b[1] - a[1])
  })
}

/** Ears cut off one by one; what is left when no corner is an ear any more, by rounding, is left out. */
function triangulate(ring: Polygon): readonly Triangle[] {
  const left = ring.map((_, i) => i)
  const triangles: Triangle[] = []
  let sinceCut = 0
  for (let at = 0; left.length >= 3 && sinceCut <= left.length; ) {
    const n = left.length
    at %= n
    const ear: Triangle = [left[(at + n - 1) % n] as number, left[at] as number, left[(at + 1) % n] as number]
    if (isEar(ring, left, ear)) {
      triangles.push(ear)
      left.splice(at, 1)
      // The next but one: cutting fans from one corner makes thin triangles.
      at++
      sinceCut = 0
    } else {
      at++
      sinceCut++
    }
  }
  return triangles
}

function isEar(ring: Polygon, left: readonly number[], ear: Triangle): boolean {
  const [a, b, c] = pointsOf(ring, ear) as unknown as readonly [Point, Point, Point]
  if (!(turn(a, b, c) > 0)) return false
  return left.every((i) => {
    if (ear.includes(i)) return true
    const p = ring[i] as Point
    return turn(a, b, p) < 0 || turn(b, c, p) < 0 || turn(c, a, p) < 0
  })
}

/** Triangles joined into convex parts as long as that goes (Hertel and Mehlhorn 1983), and a kite over every edge left between two. */
function partsAndKites(ring: Polygon, triangles: readonly Triangle[]): readonly Polygon[] {
  const partOf = new Map<string, readonly number[]>()
  const apexOf = new Map<string, number>()
  for (const triangle of triangles)
    triangle.forEach((a, k) => {
      const edge = `${a} ${triangle[(k + 1) % 3]}`
      partOf.set(edge, triangle)
      apexOf.set(edge, triangle[(k + 2) % 3] as number)
    })
  const kites = [...apexOf].flatMap(([edge, left]) => {
    const [a, b] = edge.split(' ').map(Number) as [number, number]
    const right = apexOf.get(`${b} ${a}`)
    if (a > b || right === undefined) return []
    const whole = joined(
      partOf.get(edge) as readonly number[],
      partOf.get(`${b} ${a}`) as readonly number[],
      a,
      b,
    )
    if (!whole.every((_, i) => leftOf(pointsOf(ring, whole), i, i + 1, i + 2)))
      return kite(ring[a] as Point, ring[b] as Point, ring[right] as Point, ring[left] as Point)
    whole.forEach((corner, i) => {
      partOf.set(`${corner} ${whole[(i + 1) % whole.length]}`, whole)
    })
    return []
  })
  return [
    ...[...new Set(partOf.values())]
      .filter((part) => isCurrent(part, partOf))
      .map((part) => pointsOf(ring, part)),
    ...kites,
  ]
}

/** False for a part that has since been joined to another: the edge between the two still leads to it. */
function isCurrent(part: readonly number[], partOf: ReadonlyMap<string, readonly number[]>): boolean {
  return part.every((a, i) => partOf.get(`${a} ${part[(i + 1) % part.length]}`) === part)
}

/** Two rings of corners as one, without the edge from a to b that runs in the first and back in the second. */
function joined(
  first: readonly number[],
  second: readonly number[],
  a: number,
  b: number,
): readonly number[] {
  const fromB = [...first, ...first].slice(first.indexOf(b), first.indexOf(b) + first.length)
  const fromA = [...second, ...second].slice(second.indexOf(a), second.indexOf(a) + second.length)
  return [...fromB, ...fromA.slice(1, -1)]
}

/** A convex quadrilateral with the diagonal ab whose other corners lie between the middle of ab and c, d; c is on the right of ab. */
function kite(a: Point, b: Point, c: Point, d: Point): readonly Polygon[] {
  const [mx, my] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  for (let share = 1; share > 1e-6; share /= 2) {
    const towards = ([x, y]: Point): Point => [mx + share * (x - mx), my + share * (y - my)]
    const corners = [a, towards(c), b, towards(d)]
    if (corners.every((_, i) => leftOf(corners, i, i + 1, i + 2))) return [corners]
  }
  return []
}

function hullIndices(ring: Polygon): readonly number[] {
  const byX = ring
    .map((_, i) => i)
    .sort((i, j) => {
      const [p, q] = [ring[i] as Point, ring[j] as Point]
      return p[0] - q[0] || p[1] - q[1]
    })
  const half = (order: readonly number[]) => {
    const chain: number[] = []
    for (const i of order) {
      while (chain.length > 1 && !leftOf(ring, chain.at(-2) as number, chain.at(-1) as number, i)) chain.pop()
      chain.push(i)
    }
    return chain.slice(0, -1)
  }
  return [...half(byX), ...half([...byX].reverse())]
}

function leftOf(ring: Polygon, i: number, j: number, k: number): boolean {
  const n = ring.length
  return turn(ring[i % n] as Point, ring[j % n] as Point, ring[k % n] as Point) > 0
}

/** Twice the area of the triangle, positive if it is walked counter-clockwise. */
function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
}

function pointsOf(ring: Polygon, corners: readonly number[]): Polygon {
  return corners.map((i) => ring[i] as Point)
}
