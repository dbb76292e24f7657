import type { Garment } from '../garments/garment.ts'
import { type PanelEdges, panelEdges } from '../garments/take-off.ts'
import type { Polygon } from '../geometry/types.ts'
import type { FreePanel } from './cloth-of.ts'
import { outlineWithin } from './overlaps.ts'

/** A panel as it lies on the table. */
export interface TablePanel extends PanelEdges {
  /** The edges that a tape finds once `takeOff` is off, in the panel's own coordinates. */
  readonly outline: Polygon
  /** A piece takes over a hem: it stays on, and its fold is the edge. */
  readonly hemsOn: boolean
}

/** An offcut has its edges from the cut before it: nothing has to come off. */
export function onTheTable(garment: Garment, panel: FreePanel): TablePanel {
  const { hemmed, reserved, outline } = panel
  const hemsOn = hemmed !== null && reserved.some((place) => !outlineWithin(place.outline, outline))
  const edges =
    panel.from === 'garment' ? panelEdges(garment, panel.id, hemsOn) : { takeOff: [], seamLines: false }
  return { ...edges, outline: hemsOn ? hemmed.outline : outline, hemsOn }
}
