import type { Mm } from '../../base/units.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import { polygonIsSimple } from '../../geometry/simple.ts'
import type { PanelDraft } from '../drafting/draft.ts'
import { outlineOf, type PanelEdge } from '../drafting/trace.ts'
import type { Opening, PanelShape } from '../kind.ts'
import { lossWhenCut } from '../losses.ts'
import { inset } from './inset.ts'
import { sewn } from './sewn.ts'
import { unfolded } from './unfold.ts'

/**
 * The panel that opening the garment leaves of this draft, or null: when cutting leaves nothing, or when the measures
 * contradict one another so that the draft crosses itself. The outline is simple and counter-clockwise. Its origin is
 * the lower left of the panel AS SEWN, however it is opened, so that marked flaws stay where they are.
 */
export function openPanel(draft: PanelDraft, opening: Opening): PanelShape | null {
  const { edges, flaws } = sewn(draft)
  const outline = outlineOf(edges)
  if (!(polygonArea(outline) > 0) || !polygonIsSimple(outline)) return null
  const left =
    opening === 'cut' ? cutOut(edges, ({ was, depth }) => lossWhenCut(was, depth)) : unfolded(edges)
  return left && { id: draft.id, outline: outlineOf(left), edges: left.map((edge) => edge.was), flaws }
}

/** The edges left when beside each one what it loses is cut off; null if that leaves nothing. */
export function cutOut(
  edges: readonly PanelEdge[],
  lossOf: (edge: PanelEdge) => Mm,
): readonly PanelEdge[] | null {
  const left = inset(edges.map((edge) => ({ ...edge, loss: lossOf(edge) })))
  if (!left) return null
  const { outline, sources } = left
  return outline.map((from, k) => ({
    ...(edges[sources[k] as number] as PanelEdge),
    from,
    to: outline[(k + 1) % outline.length] as (typeof outline)[number],
  }))
}
