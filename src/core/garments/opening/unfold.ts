import type { Mm } from '../../base/units.ts'
import { polygonIsSimple } from '../../geometry/simple.ts'
import type { Point } from '../../geometry/types.ts'
import { outlineOf, type PanelEdge } from '../drafting/trace.ts'

/** Hem edges that turn less than this (cosine) are one hem; at a sharper corner a new one begins. */
const SAME_HEM = 0.5

/** A side that leaves the hem flatter than this (sine) gives no clue how the hem was cut. */
const FLATTEST_SIDE = 0.2

/**
 * The panel with its hems let down by their depth. A hem was turned up inside the garment, so it cannot be wider than
 * the cloth just above its fold: its sides are that cloth's mirror image where it narrows, square where it widens. At a
 * corner between two hems nothing is counted, since the cloth there is often trimmed. Returns the panel
 * unchanged should the hems run into one another.
 */
export function unfolded(edges: readonly PanelEdge[]): readonly PanelEdge[] {
  const first = edges.findIndex((_, k) => startsRun(edges, k))
  if (first < 0) return edges
  const turned = [...edges.slice(first), ...edges.slice(0, first)]
  const result: PanelEdge[] = []
  for (let k = 0; k < turned.length; ) {
    const run = runAt(turned, k)
    if (run.length === 0) result.push(turned[k] as PanelEdge)
    else
      result.push(
        ...letDown(turned.at(k - 1) as PanelEdge, run, turned[(k + run.length) % turned.length] as PanelEdge),
      )
    k += Math.max(1, run.length)
  }
  return polygonIsSimple(outlineOf(result)) ? result : edges
}

function startsRun(edges: readonly PanelEdge[], k: number): boolean {
  const [before, here] = [edges.at(k - 1) as PanelEdge, edges[k] as PanelEdge]
  return here.was === 'hem' && !goesOn(before, here)
}

function goesOn(a: PanelEdge, b: PanelEdge): boolean {
  const [u, v] = [along(a), along(b)]
  return a.was === 'hem' && b.was === 'hem' && a.depth === b.depth && u[0] * v[0] + u[1] * v[1] > SAME_HEM
}

/** The hem that starts at edge k; empty if that is no hem. */
function runAt(edges: readonly PanelEdge[], k: number): readonly PanelEdge[] {
  if (edges[k]?.was !== 'hem') return []
  let end = k + 1
  while (end < edges.length && goesOn(edges[end - 1] as PanelEdge, edges[end] as PanelEdge)) end++
  return edges.slice(k, end)
}

/** The way round a let-down hem: down one side, along the new edge, up the other. */
function letDown(before: PanelEdge, run: readonly PanelEdge[], after: PanelEdge): readonly PanelEdge[] {
  const [head, tail] = [run[0] as PanelEdge, run.at(-1) as PanelEdge]
  const depth = head.depth
  const back: Point = along({ ...before, from: before.to, to: before.from })
  const corners: Point[] = [outer(head, head.from, depth, narrowing(head, back, 1) * depth)]
  for (let k = 1; k < run.length; k++)
    corners.push(joint(run[k - 1] as PanelEdge, run[k] as PanelEdge, depth))
  corners.push(outer(tail, tail.to, depth, -narrowing(tail, along(after), -1) * depth))
  const side = { was: 'seam' as const, depth: 0 }
  const bottom = run.map((edge, k) => ({ ...edge, from: corners[k] as Point, to: corners[k + 1] as Point }))
  return [
    { from: head.from, to: corners[0] as Point, ...side },
    ...bottom,
    { from: corners.at(-1) as Point, to: tail.to, ...side },
  ]
}

/** How far the side that leaves the hem in direction `side` moves in along it for each mm up; `sign` 1 at its start, −1 at its end. */
function narrowing(hem: PanelEdge, side: Point, sign: 1 | -1): number {
  const [ux, uy] = along(hem)
  const up = side[1] * ux - side[0] * uy
  if (up < FLATTEST_SIDE) return 0
  return Math.max(0, (sign * (side[0] * ux + side[1] * uy)) / up)
}

/** The point `depth` outside the hem and `inward` along it from `at`. */
function outer(hem: PanelEdge, at: Point, depth: Mm, inward: Mm): Point {
  const [ux, uy] = along(hem)
  return [at[0] + ux * inward + uy * depth, at[1] + uy * inward - ux * depth]
}

/** Where the outer lines of two parts of one hem meet. */
function joint(a: PanelEdge, b: PanelEdge, depth: Mm): Point {
  const [u, v] = [along(a), along(b)]
  const reach = depth / (1 + u[0] * v[0] + u[1] * v[1])
  return [b.from[0] + (u[1] + v[1]) * reach, b.from[1] - (u[0] + v[0]) * reach]
}

function along({ from, to }: Pick<PanelEdge, 'from' | 'to'>): Point {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
}
