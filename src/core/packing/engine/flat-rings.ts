import type { Point, Rings } from '../../geometry/types.ts'

/** Numbers stored for each edge: ax, ay, by, dx, dy, 1 / length². */
export const EDGE = 6

/**
 * Rings laid out for hot loops: one flat array of edges, and the box round them. Winding does not matter; rings
 * must not cross.
 */
export interface FlatRings {
  readonly edges: Float64Array
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
  /** True if the rings are just their box, which makes the nearest point of them cheap to find. */
  readonly isBox: boolean
}

export function flatRings(rings: Rings): FlatRings {
  const edges = new Float64Array(EDGE * rings.reduce((sum, ring) => sum + ring.length, 0))
  let minX = Number.POSITIVE_INFINITY
  let minY = Number.POSITIVE_INFINITY
  let maxX = Number.NEGATIVE_INFINITY
  let maxY = Number.NEGATIVE_INFINITY
  let at = 0
  for (const ring of rings) {
    let [ax, ay] = ring[ring.length - 1] as Point
    for (const [bx, by] of ring) {
      const dx = bx - ax
      const dy = by - ay
      edges.set([ax, ay, by, dx, dy, dx === 0 && dy === 0 ? 0 : 1 / (dx * dx + dy * dy)], at)
      at += EDGE
      minX = Math.min(minX, bx)
      maxX = Math.max(maxX, bx)
      minY = Math.min(minY, by)
      maxY = Math.max(maxY, by)
      ax = bx
      ay = by
    }
  }
  const isBox = rings.length === 1 && edges.length === 4 * EDGE && edgesAreAxial(edges)
  return { edges, minX, minY, maxX, maxY, isBox }
}

function edgesAreAxial(edges: Float64Array): boolean {
  for (let i = 0; i < edges.length; i += EDGE) if (edges[i + 3] !== 0 && edges[i + 4] !== 0) return false
  return true
}

/** True if the point is inside the rings (crossing number; a point on the boundary may count either way). */
export function flatContains(flat: FlatRings, x: number, y: number): boolean {
  if (x < flat.minX || x > flat.maxX || y < flat.minY || y > flat.maxY) return false
  const edges = flat.edges
  let inside = false
  for (let i = 0; i < edges.length; i += EDGE) {
    const ay = edges[i + 1] as number
    if (ay > y !== (edges[i + 2] as number) > y) {
      const along = ((y - ay) * (edges[i + 3] as number)) / (edges[i + 4] as number)
      if (x - (edges[i] as number) < along) inside = !inside
    }
  }
  return inside
}

/** Squared distance from a point to the edge that starts at `i` in the numbers of flat rings. */
export function edgeDistance2(edges: Float64Array, i: number, x: number, y: number): number {
  const px = x - (edges[i] as number)
  const py = y - (edges[i + 1] as number)
  const dx = edges[i + 3] as number
  const dy = edges[i + 4] as number
  let t = (px * dx + py * dy) * (edges[i + 5] as number)
  if (t < 0) t = 0
  else if (t > 1) t = 1
  const ex = px - t * dx
  const ey = py - t * dy
  return ex * ex + ey * ey
}

/** Squared distance from a point to the boundary of the rings. */
export function flatDistance2(flat: FlatRings, x: number, y: number): number {
  const edges = flat.edges
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < edges.length; i += EDGE) {
    const d2 = edgeDistance2(edges, i, x, y)
    if (d2 < least) least = d2
  }
  return least
}

/** Nearest boundary point, for `flatNearest`: filled in place so that the hot loop allocates nothing. */
export interface Nearest {
  x: number
  y: number
  /** Direction of the edge it lies on, not normalised. */
  dx: number
  dy: number
}

/** The point of the edge that starts at `i` in the numbers of flat rings nearest to (x, y). */
export function edgeNearest(edges: Float64Array, i: number, x: number, y: number, into: Nearest): void {
  const dx = edges[i + 3] as number
  const dy = edges[i + 4] as number
  const along = (x - (edges[i] as number)) * dx + (y - (edges[i + 1] as number)) * dy
  const t = Math.max(0, Math.min(1, along * (edges[i + 5] as number)))
  into.x = (edges[i] as number) + t * dx
  into.y = (edges[i + 1] as number) + t * dy
  into.dx = dx
  into.dy = dy
}

/** The boundary point nearest to (x, y). */
export function flatNearest(flat: FlatRings, x: number, y: number, into: Nearest): void {
  const { edges } = flat
  let least = Number.POSITIVE_INFINITY
  let nearest = 0
  for (let i = 0; i < edges.length; i += EDGE) {
    const d2 = edgeDistance2(edges, i, x, y)
    if (d2 < least) {
      least = d2
      nearest = i
    }
  }
  edgeNearest(edges, nearest, x, y, into)
}

/** Sets `into` to the point itself if the rings hold it, else to the nearest point of their boundary. */
export function flatProject(flat: FlatRings, x: number, y: number, into: Nearest): void {
  if (flat.isBox) {
    into.x = Math.min(Math.max(x, flat.minX), flat.maxX)
    into.y = Math.min(Math.max(y, flat.minY), flat.maxY)
  } else if (flatContains(flat, x, y)) {
    into.x = x
    into.y = y
  } else flatNearest(flat, x, y, into)
}
