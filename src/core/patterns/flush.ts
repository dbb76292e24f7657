import type { Mm } from '../base/units.ts'
import { polygonIsSimple } from '../geometry/simple.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import { CURVE_EXCESS } from './curves.ts'

/** Out beyond the line by no more than this is on it, mm. */
const ON_LINE = 1e-6

/**
 * The counter-clockwise outline with the corners at both ends of an edge cut off flush with the edge's line, where allowances
 * of slanting sides stand out beyond it by up to `most`; the edge grows as far as those sides reach on the line, and comes
 * first. null if more than that stands out, or would have to be cut to come clear.
 */
export function flushAt(
  outline: Polygon,
  edge: number,
  most: Mm,
): { readonly outline: Polygon; readonly edge: number } | null {
  const at = (k: number) => outline[(edge + k + outline.length) % outline.length] as Point
  const turned = outline.map((_, k) => at(k))
  const [from, to] = [at(0), at(1)]
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const out = ([x, y]: Point): Mm => (x - from[0]) * uy - (y - from[1]) * ux
  const ahead = cutBack(turned.slice(1), out, most + CURVE_EXCESS)
  if (!ahead) return null
  const behind = cutBack([from, ...[...ahead].reverse()], out, most + CURVE_EXCESS)
  if (!behind) return null
  const flush = [behind[0] as Point, ...behind.slice(1).reverse()]
  return polygonIsSimple(flush) ? { outline: flush, edge: 0 } : null
}

/** A path from a point on the line; what it does beyond the line before it first comes back is left out. */
function cutBack(path: Polygon, out: (point: Point) => Mm, most: Mm): Polygon | null {
  const back = path.findIndex((point, k) => k > 0 && out(point) <= ON_LINE)
  if (back === 1) return path
  const poking = path.slice(1, back)
  if (back < 0 || poking.some((point) => out(point) > most)) return null
  const [a, b] = [path[back - 1], path[back]] as [Point, Point]
  const share = Math.min(1, out(a) / (out(a) - out(b)))
  const meet: Point = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]
  return share === 1 ? [b, ...path.slice(back + 1)] : [meet, ...path.slice(back)]
}
