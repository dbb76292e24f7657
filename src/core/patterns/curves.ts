import type { Mm } from '../base/units.ts'
import type { Point } from '../geometry/types.ts'

/** A cubic Bézier edge: start, two control points, end. */
export type Cubic = readonly [Point, Point, Point, Point]

/** How far a cut outline may stand off the true one along curves, mm, always outside: finer than shears can follow. */
export const CURVE_EXCESS = 0.2

/** What of that a chord may part from its curve; the corner between two chords, moved out, takes the rest. */
const CHORD_SHARE = 0.15
const CORNER_SHARE = CURVE_EXCESS - CHORD_SHARE

/** More chords than any garment edge needs; reached only by curves with a cusp. */
const MOST_CHORDS = 128

/** A curve as chords. */
export interface SampledCurve {
  /** Corners from the start, which is included, to the end, which is not. */
  readonly points: readonly Point[]
  /** The curve passes its chords on their right by no more than this. */
  readonly bulge: Mm
}

/**
 * The fewest chords of equal parameter steps that keep to `CURVE_EXCESS` when the edge is then moved out by
 * `allowance`. Equal steps make a curve and its mirror image sample alike.
 */
export function sampledCurve(curve: Cubic, allowance: Mm): SampledCurve {
  const reach = allowance + CHORD_SHARE
  // A mitre between chords turning by 2h stands reach × (1 / cos h − 1) off the true offset curve.
  const halfTurn = Math.acos(reach / (reach + CORNER_SHARE))
  for (let chords = 1; ; chords++) {
    const parts = splitEvenly(curve, chords, (part) => chords === MOST_CHORDS || isFlat(part, halfTurn))
    if (parts !== null) {
      return {
        points: parts.map((part) => part[0]),
        bulge: Math.max(0, ...parts.flatMap(offsetsRight)) * 0.75,
      }
    }
  }
}

/** Chords by which a length along a curve is measured: to a hundredth of a millimetre on any edge of a garment. */
const MEASURING_CHORDS = 200

/** Length of the curve. */
export function curveLength(curve: Cubic): Mm {
  let length = 0
  for (let k = 0; k < MEASURING_CHORDS; k++) length += distance(...measuringChord(curve, k))
  return length
}

/** The place so far along the curve, and the unit vector in which it runs there; beyond its end, the end. */
export function onCurve(curve: Cubic, along: Mm): { readonly point: Point; readonly direction: Point } {
  let left = along
  for (let k = 0; ; k++) {
    const [from, to] = measuringChord(curve, k)
    const length = distance(from, to)
    if (left > length && k < MEASURING_CHORDS - 1) {
      left -= length
      continue
    }
    const direction: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    return { point: mix(from, to, Math.min(1, left / length)), direction }
  }
}

function measuringChord(curve: Cubic, k: number): readonly [Point, Point] {
  const at = (step: number): Point => {
    const t = step / MEASURING_CHORDS
    return polar(curve, t, t, t)
  }
  return [at(k), at(k + 1)]
}

/** Whether the curve keeps to its chord: near enough, without running back, and leaving and reaching it at a small angle. */
function isFlat(part: Cubic, halfTurn: number): boolean {
  const [a, b, c, d] = part
  const length = distance(a, d)
  if (length === 0) return false
  const [right1, right2] = offsetsRight(part)
  // A cubic parts from its chord by at most 3/4 of the farther control point (Bernstein weights 3t(1−t) ≤ 3/4).
  if (Math.max(Math.abs(right1), Math.abs(right2)) * 0.75 > CHORD_SHARE) return false
  const along1 = dot(a, d, a, b) / length
  const along2 = dot(a, d, a, c) / length
  if (along1 < 0 || along2 < along1 || along2 > length) return false
  const first = distance(a, b) > 0 ? angleBetween(a, d, a, b) : angleBetween(a, d, a, c)
  const last = distance(c, d) > 0 ? angleBetween(a, d, c, d) : angleBetween(a, d, b, d)
  return first <= halfTurn && last <= halfTurn
}

/** Signed distances of the control points from the chord, positive on its right. A chord without length: plain distances. */
function offsetsRight([a, b, c, d]: Cubic): readonly [Mm, Mm] {
  const length = distance(a, d)
  if (length === 0) return [distance(a, b), distance(a, c)]
  return [-cross(a, d, a, b) / length, -cross(a, d, a, c) / length]
}

/** The curve in equal parameter steps, or null at the first part that will not do. */
function splitEvenly(
  curve: Cubic,
  chords: number,
  willDo: (part: Cubic) => boolean,
): readonly Cubic[] | null {
  const parts: Cubic[] = []
  for (let k = 0; k < chords; k++) {
    const part = between(curve, k / chords, (k + 1) / chords)
    if (!willDo(part)) return null
    parts.push(part)
  }
  return parts
}

/** The part of the curve from parameter s to t, by its polar form (Ramshaw 1987). The ends of the whole are kept exactly. */
function between(curve: Cubic, s: number, t: number): Cubic {
  return [
    s === 0 ? curve[0] : polar(curve, s, s, s),
    polar(curve, s, s, t),
    polar(curve, s, t, t),
    t === 1 ? curve[3] : polar(curve, t, t, t),
  ]
}

function polar([a, b, c, d]: Cubic, r: number, s: number, t: number): Point {
  const ab = mix(a, b, r)
  const bc = mix(b, c, r)
  const cd = mix(c, d, r)
  return mix(mix(ab, bc, s), mix(bc, cd, s), t)
}

function mix(a: Point, b: Point, t: number): Point {
  return [a[0] * (1 - t) + b[0] * t, a[1] * (1 - t) + b[1] * t]
}

function distance(a: Point, b: Point): Mm {
  return Math.hypot(b[0] - a[0], b[1] - a[1])
}

function cross(a: Point, b: Point, c: Point, d: Point): number {
  return (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
}

function dot(a: Point, b: Point, c: Point, d: Point): number {
  return (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
}

function angleBetween(a: Point, b: Point, c: Point, d: Point): number {
  return Math.atan2(Math.abs(cross(a, b, c, d)), dot(a, b, c, d))
}
