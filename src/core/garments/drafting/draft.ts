import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import type { BuiltInFlaw, EdgeWas } from '../kind.ts'
import { HEM_DEPTH } from '../losses.ts'

/** An edge of a panel as sewn, from wherever the last one ended. */
export interface DraftEdge {
  readonly to: Point
  readonly was: EdgeWas
  /** Control point of a quadratic Bézier edge; null: straight. It bends one way only, so it is either safe inside its chords or inside its tangents. */
  readonly bend: Point | null
  /** Depth of a hem or casing; 0 for every other edge. */
  readonly depth: Mm
}

/** A run of edges from a starting point. */
export interface Path {
  readonly start: Point
  readonly edges: readonly DraftEdge[]
}

/** A panel as sewn, before opening costs anything: a closed path, counter-clockwise, +y up the garment. */
export interface PanelDraft extends Path {
  readonly id: string
  readonly flaws: readonly BuiltInFlaw[]
}

export const seam = (to: Point, bend: Point | null = null): DraftEdge => ({ to, was: 'seam', bend, depth: 0 })
export const fold = (to: Point): DraftEdge => ({ to, was: 'fold', bend: null, depth: 0 })
export const raw = (to: Point): DraftEdge => ({ to, was: 'raw', bend: null, depth: 0 })
export const selvedge = (to: Point): DraftEdge => ({ to, was: 'selvedge', bend: null, depth: 0 })
export const hem = (to: Point, depth: Mm = HEM_DEPTH): DraftEdge => ({ to, was: 'hem', bend: null, depth })

/** Several edges through these points. */
export function through(points: readonly Point[], edge: (to: Point) => DraftEdge): readonly DraftEdge[] {
  return points.map((point) => edge(point))
}

/** The panel on both sides of the line x = 0, from its right half: bottom centre, out, up, in to top centre. */
export function whole(id: string, half: Path, flaws: readonly BuiltInFlaw[] = []): PanelDraft {
  return { id, start: half.start, edges: [...half.edges, ...turnedOver(half).edges], flaws }
}

/** The right half alone, closed along the centre line by an edge that was `was`. */
export function rightHalf(
  id: string,
  half: Path,
  close: (to: Point) => DraftEdge,
  flaws: readonly BuiltInFlaw[] = [],
): PanelDraft {
  return { id, start: half.start, edges: [...half.edges, close(half.start)], flaws }
}

/** The same path seen in a mirror at x = 0, walked the other way, so that it stays counter-clockwise. */
export function turnedOver(path: Path): Path {
  const stops = [path.start, ...path.edges.map((edge) => edge.to)]
  const edges = path.edges.map((edge, k) => ({
    ...edge,
    to: flipped(stops[k] as Point),
    bend: edge.bend && flipped(edge.bend),
  }))
  return { start: flipped(stops.at(-1) as Point), edges: edges.reverse() }
}

/** The panel of the other side of the body. */
export function otherSide(id: string, draft: PanelDraft): PanelDraft {
  const flaws = draft.flaws.map((flaw) => ({ ...flaw, outline: flaw.outline.map(flipped).reverse() }))
  return { id, ...turnedOver(draft), flaws }
}

export function movedEdges(edges: readonly DraftEdge[], dx: Mm, dy: Mm): readonly DraftEdge[] {
  const by = ([x, y]: Point): Point => [x + dx, y + dy]
  return edges.map((edge) => ({ ...edge, to: by(edge.to), bend: edge.bend && by(edge.bend) }))
}

/** An upright rectangle that comes with the garment, counter-clockwise. */
export function boxFlaw(kind: BuiltInFlaw['kind'], left: Mm, bottom: Mm, right: Mm, top: Mm): BuiltInFlaw {
  return {
    kind,
    outline: [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ],
  }
}

function flipped([x, y]: Point): Point {
  return [x === 0 ? 0 : -x, y]
}
