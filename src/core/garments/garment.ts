import type { ClothMake, ClothRole, Faces, Stretch, Surface } from '../base/terms.ts'
import type { Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import type { KindId, LabelSize, Measures, Opening, Traits } from './kind.ts'

/** What a marked flaw is; only a name, all are areas no piece may use. */
export const FLAW_KINDS = ['hole', 'stain', 'thin', 'print', 'seam', 'dart', 'pocket', 'worn-pile'] as const
export type FlawKind = (typeof FLAW_KINDS)[number]

/** As the user marked it, in its panel's coordinates. `line` is a stroke `width` wide. */
export type FlawShape =
  | { readonly form: 'round'; readonly centre: Point; readonly radius: Mm }
  | { readonly form: 'box'; readonly from: Point; readonly to: Point }
  | { readonly form: 'line'; readonly points: readonly Point[]; readonly width: Mm }

export interface MarkedFlaw {
  readonly id: string
  readonly panel: string
  readonly kind: FlawKind
  readonly shape: FlawShape
}

/** What the cloth is and does. */
export interface Cloth {
  /** null: not measured. */
  readonly stretch: Stretch | null
  readonly structure: ClothMake | 'unknown'
  readonly surface: Surface
  /** Which way the pile strokes smooth on the garment as worn; only with a one-way surface. */
  readonly pile: 'down' | 'up'
  readonly faces: Faces
  readonly fibres: string
  readonly colour: string
}

/** A second-hand garment, or a remnant or length of cloth, that can be cut up. */
export interface Garment {
  readonly id: string
  readonly name: string
  readonly kind: KindId
  readonly labelSize: LabelSize | null
  readonly measures: Measures
  readonly traits: Traits
  readonly opening: Opening
  /** Only for kind `free-outline`: drawn by the user. */
  readonly outline: Polygon | null
  readonly cloth: Cloth
  /** Role it may serve; null: any. */
  readonly role: ClothRole | null
  readonly flaws: readonly MarkedFlaw[]
  /** In the user's money; null: unknown. */
  readonly price: number | null
  readonly washed: boolean
  readonly note: string
  /** Weight of the cloth; null: unknown. */
  readonly gramsPerSquareMetre: number | null
  /** Where it lies, in her own words. */
  readonly place: string
  /** Ids, the one to show first. */
  readonly photos: readonly string[]
  /** Day of buying, as 2026-11-25; null: unknown. */
  readonly boughtOn: string | null
  /** Off the shelf: nothing of it is left to cut. */
  readonly usedUp: boolean
}

/** What is known of a garment nobody owns yet. */
export const NOT_YET_OWNED = {
  price: null,
  washed: false,
  note: '',
  gramsPerSquareMetre: null,
  place: '',
  photos: [],
  boughtOn: null,
  usedUp: false,
} as const satisfies Partial<Garment>
