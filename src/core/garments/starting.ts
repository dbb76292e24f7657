import { type Garment, NOT_YET_OWNED } from './garment.ts'
import type { GarmentKind, KindId, LabelSize, Measures, Traits } from './kind.ts'
import { kindOf } from './kinds.ts'

/** The size to start from when the label is missing. */
const UNKNOWN_SIZE: LabelSize = 'M'

/** Figures to start from, by the size on the label; null: no label. */
export function startingMeasures(kind: GarmentKind, labelSize: LabelSize | null): Measures {
  return Object.fromEntries(kind.measures.map((spec) => [spec.id, spec.start[labelSize ?? UNKNOWN_SIZE]]))
}

/** How garments of this kind are usually made. */
export function usualTraits(kind: GarmentKind): Traits {
  return Object.fromEntries(kind.traits.map((trait) => [trait.id, trait.usual]))
}

/** A garment of which nothing is known yet but its kind. */
export function emptyGarment(kindId: KindId, id: string): Garment {
  const kind = kindOf(kindId)
  return {
    id,
    name: '',
    kind: kindId,
    labelSize: null,
    measures: startingMeasures(kind, null),
    traits: usualTraits(kind),
    opening: 'cut',
    outline: null,
    cloth: {
      stretch: null,
      structure: 'unknown',
      surface: 'plain',
      pile: 'down',
      faces: 1,
      fibres: '',
      colour: '',
    },
    role: null,
    flaws: [],
    ...NOT_YET_OWNED,
  }
}
