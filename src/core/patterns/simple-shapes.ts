import type { Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import { CURVE_EXCESS } from './curves.ts'
import type { PieceShape } from './pattern.ts'

type ShapeOf<Form extends PieceShape['form']> = Extract<PieceShape, { form: Form }>

/** Corners of the straight-sided simple shapes: counter-clockwise, in the quarter x ≥ 0, y ≥ 0, resting on both axes. */
export function straightCorners(shape: ShapeOf<'box' | 'trapezoid' | 'triangle'>): Polygon {
  if (shape.form === 'triangle') {
    return [
      [0, 0],
      [shape.width, 0],
      [shape.width / 2, shape.height],
    ]
  }
  const [bottom, top] = shape.form === 'box' ? [shape.width, shape.width] : [shape.bottom, shape.top]
  const middle = Math.max(bottom, top) / 2
  return [
    [middle - bottom / 2, 0],
    [middle + bottom / 2, 0],
    [middle + top / 2, shape.height],
    [middle - top / 2, shape.height],
  ]
}

/** A disc with its allowance, circumscribed; it rests on both axes before the allowance is added. */
export function circleOutline(shape: ShapeOf<'circle'>, allowance: Mm): Polygon {
  const radius = shape.diameter / 2
  return tangentPolygon([radius, radius], tangentsRound(radius, radius, allowance).slice(0, -1))
}

/**
 * Half a disc or half an ellipse with its allowance, and `below` its flat edge, which is down; circumscribed. The corners
 * at its ends are square.
 */
export function halfMoonOutline(shape: ShapeOf<'half-moon'>, allowance: Mm, below = allowance): Polygon {
  const across = shape.width / 2
  const round = tangentsRound(across, shape.height, allowance)
  const upperHalf = round.slice(0, (round.length + 1) / 2)
  return tangentPolygon([across, 0], [{ normal: [0, -1], distance: below }, ...upperHalf])
}

/** A line by its outward unit normal and its distance from the centre. */
interface Tangent {
  readonly normal: Point
  readonly distance: Mm
}

/**
 * Tangents to an ellipse grown by `allowance`, at equal steps of their direction, once round from +x to +x again. A
 * grown ellipse has the support function √((a cos φ)² + (b sin φ)²) + allowance, so each tangent is exact; the
 * directions of the axes are among them, so the polygon's width and height are exact too.
 */
function tangentsRound(a: Mm, b: Mm, allowance: Mm): readonly Tangent[] {
  // Where a circle of radius r has tangents a step apart, their corner stands r (1 / cos(step / 2) − 1) off it.
  const flattest = Math.max((a * a) / b, (b * b) / a) + allowance
  const step = 2 * Math.acos(flattest / (flattest + CURVE_EXCESS))
  const perQuarter = Math.ceil(Math.PI / 2 / step)
  return Array.from({ length: 4 * perQuarter + 1 }, (_, k) => {
    const normal = direction(k, perQuarter)
    return { normal, distance: Math.hypot(a * normal[0], b * normal[1]) + allowance }
  })
}

/** The direction k steps from +x, `perQuarter` steps to the right angle; exact along the axes. */
function direction(k: number, perQuarter: number): Point {
  const turn = ((k % perQuarter) / perQuarter) * (Math.PI / 2)
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  const quarters: readonly Point[] = [
    [cos, sin],
    [-sin, cos],
    [-cos, -sin],
    [sin, -cos],
  ]
  return quarters[Math.floor(k / perQuarter) % 4] as Point
}

/** The polygon bounded by tangents that turn counter-clockwise, about a centre. */
function tangentPolygon(centre: Point, tangents: readonly Tangent[]): Polygon {
  return tangents.map(({ normal: n, distance: e }, k) => {
    const { normal: m, distance: d } = tangents.at(k - 1) as Tangent
    const sine = m[0] * n[1] - m[1] * n[0]
    return [centre[0] + (d * n[1] - e * m[1]) / sine, centre[1] + (e * m[0] - d * n[0]) / sine]
  })
}
