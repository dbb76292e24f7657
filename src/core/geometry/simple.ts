import type { Point, Polygon } from './types.ts'

/**
 * Whether the boundary neither crosses nor touches itself: no two edges meet except neighbours at their common
 * corner, no edge has length 0, no edge runs back over its neighbour. Floating-point signs. A sweep along x that compares
 * only edges over the same x: outlines of thousands of points are read from the store.
 */
export function polygonIsSimple(polygon: Polygon): boolean {
  const n = polygon.length
  if (n < 3) return false
  const at = (k: number) => polygon[k % n] as Point
  const left = (k: number) => Math.min(at(k)[0], at(k + 1)[0])
  const right = (k: number) => Math.max(at(k)[0], at(k + 1)[0])
  const order = polygon.map((_, k) => k).sort((i, j) => left(i) - left(j))
  let open: number[] = []
  for (const k of order) {
    if (isNoEdge(at(k), at(k + 1)) || foldsBack(at(k), at(k + 1), at(k + 2))) return false
    const from = left(k)
    open = open.filter((other) => right(other) >= from)
    for (const other of open) {
      const apart = Math.abs(k - other)
      if (apart === 1 || apart === n - 1) continue
      if (edgesMeet(at(k), at(k + 1), at(other), at(other + 1))) return false
    }
    open.push(k)
  }
  return true
}

/**
 * The first two edges that keep the boundary from being simple, or null. Edge k runs from point k to the next. An
 * edge of length 0 is named with the one after it, and so is an edge that its neighbour runs back over.
 */
export function edgesThatMeet(polygon: Polygon): readonly [number, number] | null {
  const n = polygon.length
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n
    const a = polygon[i] as Point
    const b = polygon[next] as Point
    if (isNoEdge(a, b)) return [i, next]
    if (foldsBack(a, b, polygon[(i + 2) % n] as Point)) return [i, next]
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue
      if (edgesMeet(a, b, polygon[j] as Point, polygon[(j + 1) % n] as Point)) return [i, j]
    }
  }
  return null
}

function isNoEdge(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1]
}

/** Whether edge b→c runs back over edge a→b. */
function foldsBack(a: Point, b: Point, c: Point): boolean {
  const dot = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1])
  return dot < 0 && side(a, b, c) === 0
}

/** Whether two closed segments share a point. */
function edgesMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  if (Math.max(a[0], b[0]) < Math.min(c[0], d[0]) || Math.max(c[0], d[0]) < Math.min(a[0], b[0])) return false
  if (Math.max(a[1], b[1]) < Math.min(c[1], d[1]) || Math.max(c[1], d[1]) < Math.min(a[1], b[1])) return false
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0
}

/** 1 when p lies left of a→b, −1 right, 0 on the line. */
function side(a: Point, b: Point, p: Point): number {
  return Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (p[0] - a[0]) * (b[1] - a[1]))
}
