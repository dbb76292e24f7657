import type { Mm } from '../base/units.ts'
import type { Point } from '../geometry/types.ts'
import { cornerPoints, type Side } from './corner.ts'

/**
 * An allowance that is folded back onto the piece (a hem, a casing) must be as wide everywhere as what it comes to lie on,
 * or it pulls or puckers: its ends are the mirror image, over the fold, of the cut line beside it (common practice, "true the
 * hem with its allowance folded up").
 */

/** Sides that leave the fold flatter than this (sine), or inward corners, tell nothing of how it lies when folded. */
const FLATTEST_SIDE = 0.5

/** Steps of the cut line smaller than this come from rounding curves off, mm. */
const STEP = 0.5

/** The cut line's points at every corner; corner k is where side k − 1 passes into side k. */
export function cutCorners(sides: readonly Side[]): readonly (readonly Point[])[] {
  const ends = sides.map((side, k) => foldEnd(sides.at(k - 1) as Side, side))
  const body = sides.map((side, k): readonly Point[] => {
    const end = ends[k]
    return end ? [end.on] : cornerPoints(sides.at(k - 1) as Side, side)
  })
  return body.map((points, k) => {
    const end = ends[k]
    if (!end) return points
    const line = mirrored(end.side, upTo(end, upFrom(body, sides, k, end.towards)))
    return end.towards === -1 ? line : [...line].reverse()
  })
}

/** A corner between a folded side and one that is not. */
interface FoldEnd {
  readonly side: Side
  /** Which way round the piece the other one leads off. */
  readonly towards: 1 | -1
  /** Its direction, away from the fold, and where its cut line meets the fold. */
  readonly away: Point
  readonly on: Point
}

/** null at every other corner, and where the folded side's neighbour lies too flat, or is too short, to tell how it folds. */
function foldEnd(before: Side, after: Side): FoldEnd | null {
  if (before.folds === after.folds) return null
  const [u, v] = [direction(before), direction(after)]
  const sine = u[0] * v[1] - u[1] * v[0]
  if (sine < FLATTEST_SIDE) return null
  const beside = after.folds ? before : after
  // How far along the neighbour its cut line begins, should the fold reach over it.
  const begins = (beside.reach * (u[0] * v[0] + u[1] * v[1])) / sine
  if (begins > Math.hypot(beside.to[0] - beside.from[0], beside.to[1] - beside.from[1])) return null
  const [x, y] = after.from
  if (after.folds) {
    const out = before.reach / sine
    return { side: after, towards: -1, away: [-u[0], -u[1]], on: [x - v[0] * out, y - v[1] * out] }
  }
  const out = after.reach / sine
  return { side: before, towards: 1, away: v, on: [x + u[0] * out, y + u[1] * out] }
}

/** The cut line from the fold's end on, away from the fold, until the next side that is folded. */
function upFrom(
  body: readonly (readonly Point[])[],
  sides: readonly Side[],
  corner: number,
  step: 1 | -1,
): readonly Point[] {
  const n = sides.length
  const line = [...(body[corner] as readonly Point[])]
  for (let k = 1; k < n; k++) {
    const at = (corner + step * k + n) % n
    const points = body[at] as readonly Point[]
    line.push(...(step === 1 ? points : [...points].reverse()))
    if (sides.at(step === 1 ? at : at - 1)?.folds) break
  }
  return line
}

/**
 * The line from the fold up to the height of its allowance. Where the piece turns off flatly or ends before that, straight on
 * as it ran until there.
 */
function upTo({ side, away }: FoldEnd, line: readonly Point[]): readonly Point[] {
  const up: Point[] = [line[0] as Point]
  let course = away
  for (const point of line.slice(1)) {
    const from = up.at(-1) as Point
    const [low, high] = [heightOver(side, from), heightOver(side, point)]
    const length = Math.hypot(point[0] - from[0], point[1] - from[1])
    if (length > STEP && high - low < FLATTEST_SIDE * length) break
    if (high <= low) continue
    course = [(point[0] - from[0]) / length, (point[1] - from[1]) / length]
    if (high >= side.reach) break
    up.push(point)
  }
  const from = up.at(-1) as Point
  const steep = heightOver(side, [side.from[0] + course[0], side.from[1] + course[1]])
  const rest = (side.reach - heightOver(side, from)) / steep
  return [...up, [from[0] + course[0] * rest, from[1] + course[1] * rest]]
}

/** How far a point lies from the fold on the piece's side of it. */
function heightOver(side: Side, [x, y]: Point): Mm {
  const [ux, uy] = direction(side)
  return ux * (y - side.from[1]) - uy * (x - side.from[0])
}

function mirrored(side: Side, line: readonly Point[]): readonly Point[] {
  const [ux, uy] = direction(side)
  return line.map(([x, y]) => {
    const twice = 2 * heightOver(side, [x, y])
    return [x + uy * twice, y - ux * twice]
  })
}

function direction({ from, to }: Side): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
}
