import {
  Clipper64,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
} from 'clipper2-ts'
import type { Mm } from '../base/units.ts'
import { polygonArea } from './polygon.ts'
import { withoutSpikes } from './spikes.ts'
import type { Point, Polygon, Rings } from './types.ts'

/**
 * The only file that knows the polygon library; the built app has both once, for page and workers. Of the library only
 * classes are imported: its collection of functions would bring all of it along. It works on whole numbers, 10,000 to
 * the millimetre: rounding costs at most 0.00005 mm a coordinate, and products of garment-sized numbers stay exact in a
 * double.
 */
export const GRID_PER_MM = 10_000

/** Results lose spikes up to this wide, in grid units: rounding makes them, and their tips lie far off the truth. */
const SPIKE_WIDTH = 3

/**
 * Booleans are computed in a plane sheared by this much, y + SHEAR · x, which is exact on the grid. The library
 * can miscount windings where level edges run back over each other, as they do whenever straight-grain outlines
 * touch; sheared, ordinary outlines have no level edges.
 */
const SHEAR = 3

function toGrid(polygon: Polygon): Path64 {
  return polygon.map(([x, y]) => ({ x: Math.round(x * GRID_PER_MM), y: Math.round(y * GRID_PER_MM) }))
}

function fromGrid(path: Path64): Polygon {
  return path.map((point): Point => [point.x / GRID_PER_MM, point.y / GRID_PER_MM])
}

function sheared(rings: Rings): Paths64 {
  return rings
    .map((ring) => withoutSpikes(toGrid(ring), 0).map(({ x, y }) => ({ x, y: y + SHEAR * x })))
    .filter((path) => path.length > 0)
}

function fromSheared(paths: Paths64): Rings {
  return paths.flatMap((path) => {
    const ring = withoutSpikes(
      path.map(({ x, y }) => ({ x, y: y - SHEAR * x })),
      SPIKE_WIDTH,
    )
    return ring.length > 0 ? [fromGrid(ring)] : []
  })
}

function combine(kind: ClipType, subject: Rings, clip: Rings): Rings {
  const clipper = new Clipper64()
  clipper.addSubject(sheared(subject))
  const clips = sheared(clip)
  if (clips.length > 0) clipper.addClip(clips)
  const solution: Paths64 = []
  clipper.execute(kind, FillRule.NonZero, solution)
  return fromSheared(solution)
}

/** Everything covered by at least one ring (non-zero winding; give counter-clockwise rings for solids). */
export function ringsUnion(rings: Rings): Rings {
  return combine(ClipType.Union, rings, [])
}

/**
 * Where closed paths, which may cross themselves and each other, wind a positive number of times; with
 * `sign` −1, a negative number of times. Comes back as rings with counter-clockwise outsides either way.
 */
export function windingRings(paths: Rings, sign: 1 | -1): Rings {
  const clipper = new Clipper64()
  clipper.preserveCollinear = false
  clipper.addSubject(sheared(paths))
  const solution: Paths64 = []
  clipper.execute(ClipType.Union, sign > 0 ? FillRule.Positive : FillRule.Negative, solution)
  return fromSheared(solution)
}

/** What both sets cover. */
export function ringsIntersection(a: Rings, b: Rings): Rings {
  return combine(ClipType.Intersection, a, b)
}

/** What `a` covers and `b` does not. */
export function ringsDifference(a: Rings, b: Rings): Rings {
  return combine(ClipType.Difference, a, b)
}

/** A mitre that would reach farther than this many times the distance is squared off. */
const MITRE_LIMIT = 4

/** How an outward corner is made: `mitre` keeps it sharp (up to the limit), `round` is an arc. */
export type Corner = 'mitre' | 'round'

/**
 * Grown by `distance` (shrunk when negative). Arcs of `round` corners are sampled ON the true arc with a sagitta
 * of at most `flatness`, so the result lies inside the true offset by no more than that.
 */
export function ringsOffset(rings: Rings, distance: Mm, corner: Corner, flatness: Mm = 0.01): Rings {
  const join = corner === 'round' ? JoinType.Round : JoinType.Miter
  const offset = new ClipperOffset(MITRE_LIMIT, flatness * GRID_PER_MM)
  offset.addPaths(rings.map(toGrid), join, EndType.Polygon)
  const solution: Paths64 = []
  offset.execute(distance * GRID_PER_MM, solution)
  return solution.map(fromGrid)
}

/** Area covered, mm²: holes wind the other way and so count less. */
export function ringsArea(rings: Rings): number {
  return rings.reduce((sum, ring) => sum + polygonArea(ring), 0)
}
