import { polygonCounterClockwise } from '../geometry/polygon.ts'
import type { Polygon } from '../geometry/types.ts'
import { draftsOf } from './drafts-of.ts'
import { outlineFaults } from './faults.ts'
import type { Garment } from './garment.ts'
import type { PanelShape } from './kind.ts'
import { DRAWN_PANEL } from './kinds/free-outline.ts'
import { type HemmedPanel, openKeepingHems } from './opening/keep-hems.ts'
import { openPanel } from './opening/open-panel.ts'

/**
 * The panels a garment yields, opened as it says. Empty when its measures or outline make none; measureFaults and
 * outlineFaults tell why. A free outline is one panel, `outline`, in its own coordinates, with nothing lost.
 */
export function panelsOf(garment: Garment): readonly PanelShape[] {
  if (garment.kind === 'free-outline') return garment.outline ? drawnPanel(garment.outline) : []
  return draftsOf(garment).flatMap((draft) => openPanel(draft, garment.opening) ?? [])
}

/** The same with every hem left as it was sewn, to be the hem of what is made. */
export function panelsKeepingHems(garment: Garment): readonly HemmedPanel[] {
  if (garment.kind === 'free-outline')
    return panelsOf(garment).map((panel) => ({ ...panel, hems: [], hemDepth: 0 }))
  return draftsOf(garment).flatMap((draft) => openKeepingHems(draft, garment.opening) ?? [])
}

function drawnPanel(drawn: Polygon): readonly PanelShape[] {
  if (outlineFaults(drawn).length > 0) return []
  const outline = polygonCounterClockwise(drawn)
  return [{ id: DRAWN_PANEL, outline, edges: outline.map(() => 'raw'), flaws: [] }]
}
