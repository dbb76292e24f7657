import type { Mm } from '../base/units.ts'
import { draftsOf } from './drafts-of.ts'
import type { Garment } from './garment.ts'
import { lossWhenCut } from './losses.ts'
import { isHem } from './opening/keep-hems.ts'
import { sewn } from './opening/sewn.ts'

/** A strip that comes off a panel before anything is laid on it. `band`: a casing, rib, cuff or waistband. */
export interface TakeOff {
  readonly along: 'seam' | 'hem' | 'band' | 'selvedge'
  readonly width: Mm
}

/** How a panel comes to have the edges of its outline. */
export interface PanelEdges {
  /** To cut off first, each kind once. */
  readonly takeOff: readonly TakeOff[]
  /** Its seams were unpicked: the outline runs along their stitching, and their allowances lie beyond it. */
  readonly seamLines: boolean
}

const NOTHING: PanelEdges = { takeOff: [], seamLines: false }
const ORDER = ['selvedge', 'hem', 'band', 'seam'] as const

/**
 * What to cut off a panel of the garment so that its edges are those of `panelsOf`, or of `panelsKeepingHems` if
 * `keepsHems`. The strips come off first, rather than being counted in each distance: what is left of the panel goes
 * back into the stash by the same edges, a selvedge draws the cloth in while it is on (common practice), and a seam's edge
 * is nowhere until it is cut.
 */
export function panelEdges(garment: Garment, panel: string, keepsHems: boolean): PanelEdges {
  const draft = draftsOf(garment).find(({ id }) => id === panel)
  if (!draft) return NOTHING
  const { edges } = sewn(draft)
  if (garment.opening === 'unpicked')
    return { takeOff: [], seamLines: edges.some(({ was }) => was === 'seam') }
  const strips = new Map<string, TakeOff>()
  for (const edge of edges) {
    const width = lossWhenCut(edge.was, edge.depth)
    if (width === 0 || edge.was === 'fold' || edge.was === 'raw' || (keepsHems && isHem(edge))) continue
    const along = edge.was === 'hem' && !isHem(edge) ? 'band' : edge.was
    strips.set(`${along} ${width}`, { along, width })
  }
  const byKind = (a: TakeOff, b: TakeOff) =>
    ORDER.indexOf(a.along) - ORDER.indexOf(b.along) || a.width - b.width
  return { takeOff: [...strips.values()].sort(byKind), seamLines: false }
}
