import type { ClothMake, Stretch } from '../base/terms.ts'
import type { Percent } from '../base/units.ts'
import type { Garment } from './garment.ts'
import type { KindId } from './kind.ts'

/** How garments of a kind are nearly always made (common practice). Of the others one cannot say. */
const USUAL: Partial<Readonly<Record<KindId, ClothMake>>> = {
  't-shirt': 'knit',
  'tank-top': 'knit',
  'long-sleeved-top': 'knit',
  leggings: 'knit',
  'button-shirt': 'woven',
  'straight-skirt': 'woven',
  trousers: 'woven',
}

/** A woven that gives so much has elastane in it, whatever it is called (common practice: 10 to 25). */
const STRETCH_WOVEN: Percent = 10

export interface MadeAs {
  /** What its cloth counts as; more than one for a woven that stretches. Empty: nobody knows. */
  readonly makes: readonly ClothMake[]
  /** Not said, but usual for such a garment. */
  readonly assumed: boolean
}

/** How the garment's cloth is made, as said, or as is usual for its kind. */
export function madeAs({ kind, cloth }: Pick<Garment, 'kind' | 'cloth'>): MadeAs {
  const { structure, stretch } = cloth
  if (structure === 'unknown') return { makes: usualMake(kind), assumed: usualMake(kind).length > 0 }
  const both = structure === 'woven' && gives(stretch)
  return { makes: both ? ['woven', 'stretch-woven'] : [structure], assumed: false }
}

export function usualMake(kind: KindId): readonly ClothMake[] {
  const usual = USUAL[kind]
  return usual ? [usual] : []
}

function gives(stretch: Stretch | null): boolean {
  return stretch !== null && Math.max(stretch.across, stretch.along) >= STRETCH_WOVEN
}
