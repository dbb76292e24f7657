import type { Mm } from '../base/units.ts'
import type { Garment } from '../garments/garment.ts'
import { bodiesOf, type PanelBody } from './cloth-of.ts'
import { freeArea, hasClearRectangle } from './free-cloth.ts'
import type { Taken } from './taken.ts'

/** A rectangle, its height along the grain. */
export interface ClearSides {
  readonly width: Mm
  readonly height: Mm
}

/** What a list shows of a garment's cloth, and what it is ordered and filtered by. */
export interface ClothFigures {
  /** mm² on which nothing is reserved and no flaw lies. */
  readonly area: number
  readonly panels: readonly PanelBody[]
  /** True if some panel has a free rectangle so large; null: it was not asked. */
  readonly hasClear: boolean | null
}

/** The figures of one garment's cloth, some milliseconds of work. */
export function clothFigures(garment: Garment, taken: Taken, clear: ClearSides | null): ClothFigures {
  const cloth = { panels: bodiesOf(garment, taken) }
  return {
    area: freeArea(cloth),
    panels: cloth.panels,
    hasClear: clear && hasClearRectangle(cloth, clear.width, clear.height),
  }
}
