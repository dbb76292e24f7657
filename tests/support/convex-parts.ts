import earcut from 'earcut'
import { polygonIsConvex } from '../../src/core/geometry/convex.ts'
import { polygonArea, polygonCounterClockwise } from '../../src/core/geometry/polygon.ts'
import type { Point, Polygon } from '../../src/core/geometry/types.ts'

/**
 * Convex counter-clockwise parts that tile a simple polygon and use its own vertices only: ear clipping, then
 * diagonals taken away greedily while both ends stay convex (Hertel and Mehlhorn 1983: at most 4 times the least
 * number of parts).
 */
export function convexParts(polygon: Polygon): readonly Polygon[] {
  const outline = polygonCounterClockwise(polygon)
  if (polygonIsConvex(outline)) return [outline]
  const triangles = earcut(outline.flat())
  const parts: number[][] = []
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i] as number, triangles[i + 1] as number, triangles[i + 2] as number]
    const area = polygonArea([outline[a] as Point, outline[b] as Point, outline[c] as Point])
    if (area !== 0) parts.push(area > 0 ? [a, b, c] : [a, c, b])
  }
  mergeConvex(parts, outline)
  return parts.map((part) => part.map((i) => outline[i] as Point))
}

function mergeConvex(parts: number[][], outline: Polygon): void {
  for (let i = 0; i < parts.length; i++) {
    for (let j = i + 1; j < parts.length; j++) {
      const merged = joined(parts[i] as number[], parts[j] as number[])
      if (merged && polygonIsConvex(merged.map((k) => outline[k] as Point))) {
        parts[i] = merged
        parts.splice(j, 1)
        j = i
      }
    }
  }
}

/** Two index rings with one common edge as one ring, or null if they have none. */
function joined(a: readonly number[], b: readonly number[]): number[] | null {
  for (let i = 0; i < a.length; i++) {
    const from = a[i] as number
    const to = a[(i + 1) % a.length] as number
    const at = b.indexOf(to)
    if (at < 0 || b[(at + 1) % b.length] !== from) continue
    const restOfA = [...a.slice(i + 1), ...a.slice(0, i + 1)]
    const restOfB = [...b.slice(at + 1), ...b.slice(0, at + 1)].slice(1, -1)
    return [...restOfA, ...restOfB]
  }
  return null
}
