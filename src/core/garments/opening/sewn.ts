import { polygonBox } from '../../geometry/polygon.ts'
import { polygonMoved } from '../../geometry/transform.ts'
import type { Point } from '../../geometry/types.ts'
import type { PanelDraft } from '../drafting/draft.ts'
import { outlineOf, type PanelEdge, traced } from '../drafting/trace.ts'
import type { BuiltInFlaw } from '../kind.ts'

/** A panel as sewn, traced, with the lower left of its box at the origin: the coordinates of its flaws. */
export interface SewnPanel {
  readonly id: string
  readonly edges: readonly PanelEdge[]
  readonly flaws: readonly BuiltInFlaw[]
}

export function sewn(draft: PanelDraft): SewnPanel {
  const edges = traced(draft)
  const { minX, minY } = polygonBox(outlineOf(edges))
  const moved = ([x, y]: Point): Point => [x - minX, y - minY]
  return {
    id: draft.id,
    edges: edges.map((edge) => ({ ...edge, from: moved(edge.from), to: moved(edge.to) })),
    flaws: draft.flaws.map((flaw) => ({ ...flaw, outline: polygonMoved(flaw.outline, -minX, -minY) })),
  }
}
