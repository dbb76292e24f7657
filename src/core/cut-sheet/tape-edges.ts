import type { Mm } from '../base/units.ts'
import { polygonBox } from '../geometry/polygon.ts'
import type { Point, Polygon } from '../geometry/types.ts'

/** A straight stretch of a panel's edge that a tape can be laid along, its panel on the left. */
export interface TapeEdge {
  readonly from: Point
  readonly to: Point
}

/** Off its chord by no more than this an edge lies under a tape. Common practice: soft cloth is not straighter. */
const STRAIGHT: Mm = 2

/** And by no more than this share of its length, or a short bit of any curve would do. */
const STRAIGHT_SHARE = 0.015

/** Shorter edges give no direction one can trust. */
const LEAST_LENGTH: Mm = 60

/** Two edges must turn from one another by at least this, or a distance from one says what the other says. */
const LEAST_SINE = 0.5

/** An edge that has cloth behind it counts for so much less: distances from it would have to be read both ways. */
const CLOTH_BEHIND = 0.25

/**
 * The two straight edges of a panel from which places on it are best measured: long, as square to one another as may be,
 * and with all the cloth on one side. The one nearer to level comes first. null when the panel has no two such edges.
 */
export function tapeEdges(outline: Polygon): readonly [TapeEdge, TapeEdge] | null {
  const edges = straightEdges(outline)
  let best: { readonly pair: readonly [TapeEdge, TapeEdge]; readonly worth: number } | null = null
  for (const [i, a] of edges.entries()) {
    for (const b of edges.slice(i + 1)) {
      const sine = Math.abs(sineBetween(a, b))
      if (sine < LEAST_SINE) continue
      const worth = sine * worthOf(a, outline) * worthOf(b, outline)
      if (!best || worth > best.worth) best = { pair: isLevel(a) >= isLevel(b) ? [a, b] : [b, a], worth }
    }
  }
  return best?.pair ?? null
}

/** Square distance of a point from the line along an edge, positive on the panel's side. */
export function fromEdge({ from, to }: TapeEdge, [x, y]: Point): Mm {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return (dx * (y - from[1]) - dy * (x - from[0])) / Math.hypot(dx, dy)
}

/** Maximal runs of edges that stay under one tape, each from its first corner to its last. */
function straightEdges(outline: Polygon): readonly TapeEdge[] {
  const n = outline.length
  const at = (k: number) => outline[((k % n) + n) % n] as Point
  const edges: TapeEdge[] = []
  for (let start = 0; start < n; start++) {
    let end = start + 1
    while (end < start + n - 1 && isUnderTape(outline, start, end + 1)) end++
    const edge = { from: at(start), to: at(end) }
    const growsBackwards = isUnderTape(outline, start - 1, end)
    if (lengthOf(edge) >= LEAST_LENGTH && !growsBackwards) edges.push(edge)
  }
  return edges
}

/** True if the points from the one index to the other all lie near the line through those two, and in order along it. */
function isUnderTape(outline: Polygon, start: number, end: number): boolean {
  const n = outline.length
  const at = (k: number) => outline[((k % n) + n) % n] as Point
  const edge = { from: at(start), to: at(end) }
  const length = lengthOf(edge)
  if (length === 0) return false
  const bow = Math.min(STRAIGHT, length * STRAIGHT_SHARE)
  let reached = 0
  for (let k = start + 1; k <= end; k++) {
    const along = alongEdge(edge, at(k), length)
    if (Math.abs(fromEdge(edge, at(k))) > bow || along < reached - bow) return false
    reached = along
  }
  return true
}

function alongEdge({ from, to }: TapeEdge, [x, y]: Point, length: Mm): Mm {
  return ((x - from[0]) * (to[0] - from[0]) + (y - from[1]) * (to[1] - from[1])) / length
}

function worthOf(edge: TapeEdge, outline: Polygon): number {
  const allBefore = outline.every((point) => fromEdge(edge, point) > -STRAIGHT)
  // Beyond half the panel a longer edge helps no more.
  const { minX, minY, maxX, maxY } = polygonBox(outline)
  const enough = Math.max(maxX - minX, maxY - minY) / 2
  return Math.min(1, lengthOf(edge) / enough) * (allBefore ? 1 : CLOTH_BEHIND)
}

function lengthOf({ from, to }: TapeEdge): Mm {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}

function sineBetween(a: TapeEdge, b: TapeEdge): number {
  const [ax, ay] = [a.to[0] - a.from[0], a.to[1] - a.from[1]]
  const [bx, by] = [b.to[0] - b.from[0], b.to[1] - b.from[1]]
  return (ax * by - ay * bx) / (lengthOf(a) * lengthOf(b))
}

/** 1 for a level edge, 0 for an upright one. */
function isLevel(edge: TapeEdge): number {
  return Math.abs(edge.to[0] - edge.from[0]) / lengthOf(edge)
}
