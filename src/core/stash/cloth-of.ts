import { flawOutlines } from '../garments/flaws.ts'
import type { Garment } from '../garments/garment.ts'
import type { EdgeWas } from '../garments/kind.ts'
import type { HemmedPanel } from '../garments/opening/keep-hems.ts'
import { panelsKeepingHems, panelsOf } from '../garments/panels-of.ts'
import type { Polygon } from '../geometry/types.ts'
import type { Cut } from './cut.ts'
import { type ClothRecords, ofGarment, type ReservedPlace, type Taken, takenOf } from './taken.ts'

/** A panel or offcut that is there to cut from, in the coordinates in which the stash draws it: grain along +y, heads up. */
export interface FreePanel {
  readonly id: string
  readonly from: 'garment' | 'offcut'
  readonly outline: Polygon
  /** What edge k was on the garment; null for an offcut. */
  readonly edges: readonly EdgeWas[] | null
  /** What came with the garment or was marked; of an offcut its own too. They may overlap and cross the outline. */
  readonly flaws: readonly Polygon[]
  readonly reserved: readonly ReservedPlace[]
  /** The same panel with its hems left as they were sewn, for pieces that take them over; null if it has none. */
  readonly hemmed: HemmedPanel | null
}

/** All cloth of a garment as it is now. */
export interface GarmentCloth {
  readonly panels: readonly FreePanel[]
  /** Panels that are no more, with what was cut from them. */
  readonly cuts: readonly Cut[]
}

/**
 * What there is of the garment: the panels it opens into and the offcuts that were kept, less those that were cut. The
 * records may be of many garments.
 */
export function clothOf(garment: Garment, records: ClothRecords): GarmentCloth {
  const taken = takenOf(garment.id, records)
  return { panels: freePanels(garment, taken), cuts: ofGarment(garment.id, records).cuts }
}

/** The panels there are, with their reservations. */
export function freePanels(garment: Garment, taken: Taken): readonly FreePanel[] {
  const hemmed = new Map(panelsKeepingHems(garment).map((panel) => [panel.id, panel]))
  return bodiesOf(garment, taken).map((panel) => ({
    ...panel,
    hemmed: panel.from === 'garment' ? hemsOf(hemmed.get(panel.id)) : null,
  }))
}

/** A panel without what its hems are good for, which takes as long again to work out. */
export type PanelBody = Omit<FreePanel, 'hemmed'>

/** The same panels, to be drawn and measured. */
export function bodiesOf(garment: Garment, taken: Taken): readonly PanelBody[] {
  const reservedOn = (panel: string) => taken.reserved.filter((place) => place.panel === panel)
  const whole = panelsOf(garment).filter(({ id }) => !taken.cut.includes(id))
  return [
    ...whole.map(
      ({ id, outline, edges }): PanelBody => ({
        id,
        from: 'garment',
        outline,
        edges,
        flaws: flawOutlines(garment, id),
        reserved: reservedOn(id),
      }),
    ),
    ...taken.offcuts.map(
      ({ id, outline, flaws }): PanelBody => ({
        id,
        from: 'offcut',
        outline,
        edges: null,
        flaws: [...flaws, ...flawOutlines(garment, id)],
        reserved: reservedOn(id),
      }),
    ),
  ]
}

function hemsOf(panel: HemmedPanel | undefined): HemmedPanel | null {
  return panel && panel.hems.length > 0 ? panel : null
}
