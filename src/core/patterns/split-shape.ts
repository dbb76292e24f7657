import type { Mm } from '../base/units.ts'
import { ringsIntersection } from '../geometry/clipper.ts'
import { polygonArea, polygonBox } from '../geometry/polygon.ts'
import type { Point, Polygon, Rings } from '../geometry/types.ts'
import { cutOutline } from './cut-outline.ts'
import type { OutlineShape, PieceShape } from './pattern.ts'

/** A line through a piece: `across` it at a height, or `along` the grain at a place from side to side. */
export interface JoinLine {
  readonly way: 'across' | 'along'
  /** y of a line across, x of a line along, in the coordinates of the cut outline. */
  readonly at: Mm
}

/** A piece cut in two, each part with its allowance beyond the line. */
export interface SplitShape {
  /** Below a line across, or left of a line along. */
  readonly first: OutlineShape
  readonly second: OutlineShape
  /** Length of the new seam, from cut edge to cut edge. */
  readonly seam: Mm
}

/** Rounding of the polygon library, mm, many times over. */
const ON_LINE = 0.001

/** A part narrower than this share of the whole, or than two allowances, is a sliver that nobody would sew on. */
const LEAST_SHARE = 0.1

/**
 * The shape cut in two along a line, with `allowance` added to both parts beyond it: each is what of the cut outline lies
 * on its side of the line moved over by the allowance, drawn as a cut line that asks for no more. null where the line
 * leaves other than two parts of some size. The shape must be free of faults.
 */
export function splitShape(shape: PieceShape, { way, at }: JoinLine, allowance: Mm): SplitShape | null {
  const whole = cutOutline(shape)
  const { minX, minY, maxX, maxY } = polygonBox(whole)
  const [from, to] = way === 'across' ? [minY, maxY] : [minX, maxX]
  const least = Math.max((to - from) * LEAST_SHARE, 2 * allowance)
  if (at - from < least || to - at < least) return null
  const [first, ...rest] = between(whole, way, from, at)
  const [second, ...others] = between(whole, way, at, to)
  if (!first || !second || rest.length + others.length > 0) return null
  return {
    first: drawn(largest(between(whole, way, from, at + allowance))),
    second: drawn(largest(between(whole, way, at - allowance, to))),
    seam: lengthOnLine(first, way, at),
  }
}

/** What of the outline lies between two lines. */
function between(whole: Polygon, way: JoinLine['way'], from: Mm, to: Mm): Rings {
  const box = polygonBox(whole)
  const [x1, y1, x2, y2] =
    way === 'across'
      ? ([box.minX - 1, from, box.maxX + 1, to] as const)
      : ([from, box.minY - 1, to, box.maxY + 1] as const)
  const band: Polygon = [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ]
  return ringsIntersection([whole], [band])
}

/** The part itself: beyond a gap in the piece, its allowance may meet a sliver that is sewn to nothing. */
function largest(rings: Rings): Polygon {
  return rings.reduce((best, ring) => (polygonArea(ring) > polygonArea(best) ? ring : best), [])
}

function drawn(outline: Polygon): OutlineShape {
  return { form: 'outline', points: outline.map((at) => ({ at, allowance: 0 })), onFold: false }
}

/** Length of the edges that run on the line. */
function lengthOnLine(outline: Polygon, way: JoinLine['way'], at: Mm): Mm {
  const off = (point: Point) => Math.abs(point[way === 'across' ? 1 : 0] - at)
  return outline.reduce((sum, a, k) => {
    const b = outline[(k + 1) % outline.length] as Point
    return off(a) < ON_LINE && off(b) < ON_LINE ? sum + Math.hypot(b[0] - a[0], b[1] - a[1]) : sum
  }, 0)
}
