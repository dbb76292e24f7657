import type { Point, Polygon } from './types.ts'

/** The corners of a ring and how it turns at each of them, with directions as places on a common scale. */
interface Turning {
  readonly points: readonly Point[]
  /** Place of the direction in which each corner is left. */
  readonly leaving: Int32Array
  /** 1 where the ring turns counter-clockwise, else −1. */
  readonly sense: Int8Array
}

/** A directed step of the convolution from one pair of vertices to the next. */
interface Step {
  readonly from: number
  readonly to: number
}

function directions(points: readonly Point[]): Float64Array {
  return Float64Array.from(points, ([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length] as Point
    // `+ 0` turns −0 into 0, so that no edge to the left points to −π.
    return Math.atan2(ny - y + 0, nx - x)
  })
}

function senses(leaving: Float64Array): Int8Array {
  return Int8Array.from(leaving, (outgoing, i) => {
    const turn = outgoing - (leaving.at(i - 1) as number)
    return (turn >= 0 && turn <= Math.PI) || turn <= -Math.PI ? 1 : -1
  })
}

/** Drops repeated points and corners in which the ring goes straight on: they would only add edges. */
function withoutFlatCorners(ring: Polygon): readonly Point[] {
  const kept = ring.filter(([x, y], i) => {
    const [px, py] = ring.at(i - 1) as Point
    return x !== px || y !== py
  })
  return kept.filter(([x, y], i) => {
    const [px, py] = kept.at(i - 1) as Point
    const [nx, ny] = kept[(i + 1) % kept.length] as Point
    const cross = (x - px) * (ny - y) - (y - py) * (nx - x)
    return cross !== 0 || (x - px) * (nx - x) + (y - py) * (ny - y) < 0
  })
}

/**
 * The convolution of two rings as closed paths (Guibas, Ramshaw and Stolfi 1983): every edge of one ring stands
 * at every vertex of the other whose turn sweeps over its direction, backwards at reflex vertices. Its winding
 * number at x is the Euler characteristic of a ∩ (x − b), which for two simple counter-clockwise polygons is the
 * number of separate parts of that set: positive exactly where x lies in the Minkowski sum, so no false holes.
 *
 * Directions are compared as whole numbers, their places in one sorted list, and parallel edges are told apart as
 * if `b` were turned counter-clockwise by an infinitely small angle: so the steps in and out of every vertex pair
 * balance whatever the rounding.
 */
export function convolution(a: Polygon, b: Polygon): readonly Polygon[] {
  const pointsOfA = withoutFlatCorners(a)
  const pointsOfB = withoutFlatCorners(b)
  const anglesOfA = directions(pointsOfA)
  const anglesOfB = directions(pointsOfB)
  const scale = [...new Set([...anglesOfA, ...anglesOfB])].sort((x, y) => x - y)
  const place = new Map(scale.map((angle, i) => [angle, 2 * i]))
  const leavingA = Int32Array.from(anglesOfA, (angle) => place.get(angle) as number)
  const leavingB = Int32Array.from(anglesOfB, (angle) => (place.get(angle) as number) + 1)
  const p: Turning = { points: pointsOfA, leaving: leavingA, sense: senses(anglesOfA) }
  const q: Turning = { points: pointsOfB, leaving: leavingB, sense: senses(anglesOfB) }
  return closedTrails(stepsOf(p, q, 2 * scale.length), p.points.length * q.points.length).map((trail) =>
    trail.map((node): Point => {
      const [ax, ay] = p.points[Math.floor(node / q.points.length)] as Point
      const [bx, by] = q.points[node % q.points.length] as Point
      return [ax + bx, ay + by]
    }),
  )
}

/** Corner i of p with corner j of q is node i · (corners of q) + j. */
function stepsOf(p: Turning, q: Turning, places: number): Step[] {
  const rows = p.points.length
  const columns = q.points.length
  const steps: Step[] = []
  for (let i = 0; i < rows; i++) {
    const below = ((i + 1) % rows) * columns
    for (let j = 0; j < columns; j++) {
      const node = i * columns + j
      if (sweeps(q, j, p.leaving[i] as number, places)) addStep(steps, q.sense[j] as number, node, below + j)
      const right = i * columns + ((j + 1) % columns)
      if (sweeps(p, i, q.leaving[j] as number, places)) addStep(steps, p.sense[i] as number, node, right)
    }
  }
  return steps
}

/** True if the turn at a corner passes over a direction of the other ring, whose places are never its own. */
function sweeps(ring: Turning, corner: number, direction: number, places: number): boolean {
  const incoming = ring.leaving[corner === 0 ? ring.leaving.length - 1 : corner - 1] as number
  const outgoing = ring.leaving[corner] as number
  const low = (ring.sense[corner] as number) > 0 ? incoming : outgoing
  const high = (ring.sense[corner] as number) > 0 ? outgoing : incoming
  return (direction - low + places) % places < (high - low + places) % places
}

function addStep(steps: Step[], sign: number, from: number, to: number): void {
  if (sign > 0) steps.push({ from, to })
  else if (sign < 0) steps.push({ from: to, to: from })
}

/** The steps strung together; every node has as many steps in as out, so each walk ends where it began. */
function closedTrails(steps: readonly Step[], nodes: number): number[][] {
  const first = new Int32Array(nodes).fill(-1)
  const next = new Int32Array(steps.length)
  steps.forEach((step, s) => {
    next[s] = first[step.from] as number
    first[step.from] = s
  })
  const trails: number[][] = []
  for (const { from } of steps) {
    const trail: number[] = []
    let node = from
    for (let s = first[node] as number; s >= 0; s = first[node] as number) {
      trail.push(node)
      first[node] = next[s] as number
      node = (steps[s] as Step).to
    }
    if (trail.length > 2) trails.push(trail)
  }
  return trails
}
