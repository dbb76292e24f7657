import type { Mm } from '../../src/core/base/units.ts'
import type { Point } from '../../src/core/geometry/types.ts'
import type { Notch, OutlinePoint, OutlineShape } from '../../src/core/patterns/pattern.ts'

/** An edge on the way round a piece: where it ends, how it bends, what is added outside it. */
export interface Edge {
  readonly to: Point
  readonly curve?: readonly [Point, Point]
  readonly allowance: Mm
  readonly use?: 'hem' | 'casing'
  readonly fixed?: true
  readonly name?: string
  /** Where along it, from its start, given its length. */
  readonly notches?: readonly { readonly at: (length: Mm) => Mm; readonly count: Notch['count'] }[]
}

/** Half-way along an edge. */
export const HALF_WAY = (length: Mm): Mm => length / 2

/** The edge with one more balance mark: so many notches side by side, `at` from its start. */
export function notched(edge: Edge, name: string, count: Notch['count'], at: (length: Mm) => Mm): Edge {
  return { ...edge, name, notches: [...(edge.notches ?? []), { at, count }] }
}

export function line(to: Point, allowance: Mm): Edge {
  return { to, allowance }
}

/** An edge that a zip is sewn to: its allowance stays as wide as it is. */
export function zipped(edge: Edge): Edge {
  return { ...edge, fixed: true }
}

/** A straight edge that is turned up. */
export function hem(to: Point, depth: Mm): Edge {
  return { to, allowance: depth, use: 'hem' }
}

/** A straight edge that is turned down over elastic. */
export function casing(to: Point, depth: Mm): Edge {
  return { to, allowance: depth, use: 'casing' }
}

export function curve(first: Point, second: Point, to: Point, allowance: Mm): Edge {
  return { to, curve: [first, second], allowance }
}

/** A closed outline; the last edge must end at the start. */
export function closed(start: Point, edges: readonly Edge[]): OutlineShape {
  return { form: 'outline', points: leaving(start, edges), onFold: false }
}

/** Half an outline; the fold runs from the end of the last edge back to the start. */
export function onFold(start: Point, edges: readonly Edge[]): OutlineShape {
  const end: OutlinePoint = { at: rounded((edges.at(-1) as Edge).to), allowance: 0 }
  return { form: 'outline', points: [...leaving(start, edges), end], onFold: true }
}

function leaving(start: Point, edges: readonly Edge[]): readonly OutlinePoint[] {
  return edges.map(({ curve, allowance, use, fixed, name, notches }, k) => ({
    at: rounded(k === 0 ? start : (edges[k - 1] as Edge).to),
    ...(curve && { curve: [rounded(curve[0]), rounded(curve[1])] as const }),
    allowance,
    ...(use && { use }),
    ...(fixed && { fixed }),
    ...(name && { name }),
    ...(notches && {
      notches: placed(notches, k === 0 ? start : (edges[k - 1] as Edge).to, edges[k] as Edge),
    }),
  }))
}

function placed(notches: NonNullable<Edge['notches']>, from: Point, edge: Edge): readonly Notch[] {
  const length = edgeLength(from, edge)
  return notches.map(({ at, count }) => ({ at: hundredth(at(length)), count }))
}

/** To a hundredth of a millimetre, so that many edges sewn into one do not add up to an error that shows. */
function rounded([x, y]: Point): Point {
  return [hundredth(x), hundredth(y)]
}

export function hundredth(value: Mm): Mm {
  return Math.round(value * 100) / 100 + 0
}

/**
 * An arc about a centre as an edge, `from` and `to` in radians, less than a right angle apart. A cubic with handles
 * 4/3 tan(angle / 4) keeps to the circle within 0.03 % of its radius.
 */
export function arc(centre: Point, radius: Mm, from: number, to: number, allowance: Mm): Edge {
  const handle = (4 / 3) * Math.tan((to - from) / 4) * radius
  const start = onCircle(centre, radius, from)
  const end = onCircle(centre, radius, to)
  return curve(
    [start[0] - handle * Math.sin(from), start[1] + handle * Math.cos(from)],
    [end[0] + handle * Math.sin(to), end[1] - handle * Math.cos(to)],
    end,
    allowance,
  )
}

export function onCircle([x, y]: Point, radius: Mm, angle: number): Point {
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)]
}

/** Length of an edge from where it starts. */
export function edgeLength(from: Point, { to, curve }: Edge): Mm {
  if (!curve) return Math.hypot(to[0] - from[0], to[1] - from[1])
  const steps = 200
  let length = 0
  let [px, py] = from
  for (let k = 1; k <= steps; k++) {
    const [x, y] = bezier(from, curve, to, k / steps)
    length += Math.hypot(x - px, y - py)
    px = x
    py = y
  }
  return length
}

function bezier(a: Point, [b, c]: readonly [Point, Point], d: Point, t: number): Point {
  const s = 1 - t
  const at = (k: 0 | 1) => s * s * s * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t * t * t * d[k]
  return [at(0), at(1)]
}

/** Where a growing function reaches `target` between two bounds, by halving. */
export function solved(growing: (x: number) => number, target: number, low: number, high: number): number {
  let [a, b] = [low, high]
  for (let k = 0; k < 60; k++) {
    const middle = (a + b) / 2
    if (growing(middle) < target) a = middle
    else b = middle
  }
  return (a + b) / 2
}
