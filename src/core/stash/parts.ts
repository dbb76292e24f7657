import { pointInPolygon, polygonArea } from '../geometry/polygon.ts'
import type { Point, Polygon, Rings } from '../geometry/types.ts'

/** A connected part of a set: its outer ring counter-clockwise, its holes clockwise. */
export interface Part {
  readonly outer: Polygon
  readonly holes: readonly Polygon[]
}

/** The set's connected parts, the largest first. A part held together by single points falls apart there. */
export function connectedParts(rings: Rings): readonly Part[] {
  const simple = rings.map(meetingCorners).flatMap(partedAtPoints)
  const outers = simple.filter((ring) => polygonArea(ring) > 0)
  // From the smallest up, so that an island's hole goes to the island and not to what surrounds it.
  const bySize = [...outers].sort((a, b) => polygonArea(a) - polygonArea(b))
  const holes = new Map<Polygon, Polygon[]>(outers.map((outer) => [outer, []]))
  for (const hole of simple) {
    if (polygonArea(hole) >= 0) continue
    const outer = bySize.find((ring) => -polygonArea(hole) < polygonArea(ring) && holds(ring, hole))
    if (outer) holes.get(outer)?.push(hole)
  }
  return bySize.reverse().map((outer) => ({ outer, holes: holes.get(outer) ?? [] }))
}

/** Rings do not cross, so the first corner that is not on the boundary decides. */
function holds(outer: Polygon, inner: Polygon): boolean {
  for (const point of inner) {
    const side = pointInPolygon(point, outer)
    if (side !== 0) return side > 0
  }
  return true
}

/** A corner so near to an edge touches it, mm: the rounding of the polygon library. */
const TOUCHING = 0.0005

/** The ring with a point wherever one of its corners touches another of its edges. */
function meetingCorners(ring: Polygon): Polygon {
  return ring.flatMap((from, i) => {
    const to = ring[(i + 1) % ring.length] as Point
    const met = ring
      .map((corner) => ({ corner, along: alongEdge(corner, from, to) }))
      .filter((each): each is { corner: Point; along: number } => each.along !== null)
      .sort((a, b) => a.along - b.along)
    return [from, ...met.map(({ corner }) => corner)]
  })
}

/** How far along the edge the corner touches it, null if it does not, or at an end. */
function alongEdge([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number | null {
  const [ux, uy] = [bx - ax, by - ay]
  const length = Math.hypot(ux, uy)
  const along = ((x - ax) * ux + (y - ay) * uy) / length
  const beside = Math.abs((x - ax) * uy - (y - ay) * ux) / length
  return beside <= TOUCHING && along > TOUCHING && along < length - TOUCHING ? along : null
}

/** The ring as rings that pass no point twice. */
function partedAtPoints(ring: Polygon): readonly Polygon[] {
  const rings: Polygon[] = []
  const path: Point[] = []
  const at = new Map<string, number>()
  for (const point of ring) {
    const key = `${point[0]} ${point[1]}`
    const before = at.get(key)
    if (before === undefined) {
      at.set(key, path.length)
      path.push(point)
      continue
    }
    // Back where it was: what lies between is a ring by itself.
    const loop = path.splice(before + 1)
    for (const [x, y] of loop) at.delete(`${x} ${y}`)
    rings.push([path[before] as Point, ...loop])
  }
  rings.push(path)
  return rings.filter((each) => each.length >= 3 && polygonArea(each) !== 0)
}
