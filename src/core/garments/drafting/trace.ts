import type { Mm } from '../../base/units.ts'
import type { Point, Polygon } from '../../geometry/types.ts'
import type { EdgeWas } from '../kind.ts'
import type { DraftEdge, Path } from './draft.ts'

/** A straight edge of a panel's boundary. */
export interface PanelEdge {
  readonly from: Point
  readonly to: Point
  readonly was: EdgeWas
  readonly depth: Mm
}

/** How far a traced curve may lie inside the true one. A garment is measured to 5 mm at best. */
export const TRACE_FLATNESS: Mm = 1

/** `curved` follows the bends; `straight` joins the ends of the edges, as handbooks' worked areas do. */
export type Detail = 'curved' | 'straight'

/**
 * The draft as straight edges that never leave the cloth: where a curve bulges out they are its chords, where it bites
 * into the cloth (neckline, armhole, crotch) they are its tangents. Points without a turn are left out.
 */
export function traced(draft: Path, detail: Detail = 'curved'): readonly PanelEdge[] {
  const edges: PanelEdge[] = []
  let from = draft.start
  for (const edge of draft.edges) {
    for (const to of detail === 'curved' ? stops(from, edge) : [edge.to]) {
      append(edges, { from, to, was: edge.was, depth: edge.depth })
      from = to
    }
  }
  joinEnds(edges)
  return edges
}

export function outlineOf(edges: readonly PanelEdge[]): Polygon {
  return edges.map((edge) => edge.from)
}

/** Where the traced edge passes, its start left out. */
function stops(from: Point, { to, bend }: DraftEdge): readonly Point[] {
  if (!bend) return [to]
  // A quadratic parts from n equal chords, and from its n tangents, by at most |P0 − 2 C + P2| / (4 n²).
  const sag = Math.hypot(from[0] - 2 * bend[0] + to[0], from[1] - 2 * bend[1] + to[1]) / 4
  const parts = Math.max(1, Math.ceil(Math.sqrt(sag / TRACE_FLATNESS)))
  const blossom = (s: number, t: number): Point => [polar(0, s, t), polar(1, s, t)]
  const polar = (axis: 0 | 1, s: number, t: number): number =>
    from[axis] * (1 - s) * (1 - t) + bend[axis] * (s + t - 2 * s * t) + to[axis] * s * t
  const steps = Array.from({ length: parts }, (_, k) => k)
  if (!leftOf(from, to, bend)) return steps.map((k) => (k + 1 === parts ? to : at(blossom, k + 1, parts)))
  return [...steps.map((k) => blossom(k / parts, (k + 1) / parts)), to]
}

function at(blossom: (s: number, t: number) => Point, k: number, parts: number): Point {
  return blossom(k / parts, k / parts)
}

/** The cloth lies on the left of every edge, so a bend on the left bites into it. */
function leftOf(from: Point, to: Point, p: Point): boolean {
  return turn(from, to, p) > 0
}

function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/** A micrometre: nothing a cloth knows of. */
const IDLE: Mm = 1e-3

function append(edges: PanelEdge[], edge: PanelEdge): void {
  if (Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]) < IDLE) {
    const last = edges.pop()
    if (last) edges.push({ ...last, to: edge.to })
    return
  }
  const last = edges.at(-1)
  if (last && goesStraightOn(last, edge)) edges[edges.length - 1] = { ...last, to: edge.to }
  else edges.push(edge)
}

function joinEnds(edges: PanelEdge[]): void {
  const [first, last] = [edges[0], edges.at(-1)]
  if (!first || !last || edges.length < 4 || !goesStraightOn(last, first)) return
  edges[0] = { ...first, from: last.from }
  edges.pop()
}

function goesStraightOn(a: PanelEdge, b: PanelEdge): boolean {
  if (a.was !== b.was || a.depth !== b.depth) return false
  const ahead =
    (a.to[0] - a.from[0]) * (b.to[0] - b.from[0]) + (a.to[1] - a.from[1]) * (b.to[1] - b.from[1]) > 0
  const length = Math.hypot(b.to[0] - a.from[0], b.to[1] - a.from[1])
  return ahead && Math.abs(turn(a.from, b.to, a.to)) <= IDLE * length
}
