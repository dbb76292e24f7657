import type { Point, Polygon } from './types.ts'

function cross(o: Point, a: Point, b: Point): number {
  return (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])
}

/** Convex hull, counter-clockwise, without collinear points (Andrew's monotone chain, 1979). */
export function convexHull(points: readonly Point[]): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const chain = (ordered: readonly Point[]): Point[] => {
    const hull: Point[] = []
    for (const point of ordered) {
      while (hull.length >= 2 && cross(hull.at(-2) as Point, hull.at(-1) as Point, point) <= 0) hull.pop()
      hull.push(point)
    }
    hull.pop()
    return hull
  }
  return [...chain(sorted), ...chain(sorted.reverse())]
}

/** True if a counter-clockwise polygon has no reflex corner (straight corners are allowed). */
export function polygonIsConvex(polygon: Polygon): boolean {
  const n = polygon.length
  for (let i = 0; i < n; i++) {
    if (cross(polygon[i] as Point, polygon[(i + 1) % n] as Point, polygon[(i + 2) % n] as Point) < 0)
      return false
  }
  return true
}

/** Minkowski sum of two convex counter-clockwise polygons: their edges merged by direction. O(n + m), no new rounding. */
export function convexSum(a: Polygon, b: Polygon): Polygon {
  const p = fromLowest(a)
  const q = fromLowest(b)
  const sum: Point[] = []
  let i = 0
  let j = 0
  while (i < p.length || j < q.length) {
    const pi = p[i % p.length] as Point
    const qj = q[j % q.length] as Point
    sum.push([pi[0] + qj[0], pi[1] + qj[1]])
    const pn = p[(i + 1) % p.length] as Point
    const qn = q[(j + 1) % q.length] as Point
    const turn = (pn[0] - pi[0]) * (qn[1] - qj[1]) - (pn[1] - pi[1]) * (qn[0] - qj[0])
    if (i >= p.length) j++
    else if (j >= q.length || turn > 0) i++
    else if (turn < 0) j++
    else {
      i++
      j++
    }
  }
  return sum
}

function fromLowest(polygon: Polygon): Polygon {
  let lowest = 0
  polygon.forEach((point, i) => {
    const best = polygon[lowest] as Point
    if (point[1] < best[1] || (point[1] === best[1] && point[0] < best[0])) lowest = i
  })
  return [...polygon.slice(lowest), ...polygon.slice(0, lowest)]
}
