import type { Mm } from '../../base/units.ts'
import { polygonArea } from '../../geometry/polygon.ts'
import { polygonIsSimple } from '../../geometry/simple.ts'
import type { PanelDraft } from '../drafting/draft.ts'
import { outlineOf, type PanelEdge } from '../drafting/trace.ts'
import type { Opening, PanelShape } from '../kind.ts'
import { CASING_DEPTH, lossWhenCut } from '../losses.ts'
import { cutOut } from './open-panel.ts'
import { distanceToSegment } from './segment.ts'
import { sewn } from './sewn.ts'

/** A panel whose hems are left as they were sewn, to be the hems of what is made. */
export interface HemmedPanel extends PanelShape {
  /** Edges of the outline that are hems, along their folds. */
  readonly hems: readonly number[]
  /** Of the deepest hem: cloth lies double so far in, and stitched. 0 if there is none. */
  readonly hemDepth: Mm
}

/** The rounding of cuts, mm. */
const ON_THE_FOLD: Mm = 0.001

/** As openPanel, with nothing cut off or let down at hems. An elastic waist is no hem to keep: it is gathered. */
export function openKeepingHems(draft: PanelDraft, opening: Opening): HemmedPanel | null {
  const { edges, flaws } = sewn(draft)
  const outline = outlineOf(edges)
  if (!(polygonArea(outline) > 0) || !polygonIsSimple(outline)) return null
  const kept = edges.filter(isHem)
  const left = opening === 'cut' ? cutOut(edges, lossBesideHems) : edges
  if (!left) return null
  const hems = left.flatMap((edge, k) => (kept.some((hem) => liesOn(edge, hem)) ? [k] : []))
  return {
    id: draft.id,
    outline: outlineOf(left),
    edges: left.map((edge) => edge.was),
    flaws,
    hems,
    hemDepth: hems.length === 0 ? 0 : Math.max(...kept.map(({ depth }) => depth)),
  }
}

export function isHem({ was, depth }: PanelEdge): boolean {
  return was === 'hem' && depth < CASING_DEPTH
}

function lossBesideHems(edge: PanelEdge): Mm {
  return isHem(edge) ? 0 : lossWhenCut(edge.was, edge.depth)
}

function liesOn({ from, to }: PanelEdge, hem: PanelEdge): boolean {
  return [from, to].every((end) => distanceToSegment(end, hem.from, hem.to) < ON_THE_FOLD)
}
