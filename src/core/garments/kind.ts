import type { Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import type { PanelDraft } from './drafting/draft.ts'

/** Kinds of garment the shop check knows; one file in kinds/ each. */
export const KIND_IDS = [
  't-shirt',
  'tank-top',
  'long-sleeved-top',
  'button-shirt',
  'straight-skirt',
  'flared-skirt',
  'dress',
  'trousers',
  'leggings',
  'cloth',
  'free-outline',
] as const
export type KindId = (typeof KIND_IDS)[number]

/** Sizes printed on labels; they give starting values only. */
export const LABEL_SIZES = ['104', '116', '128', '140', '152', 'XS', 'S', 'M', 'L', 'XL', 'XXL'] as const
export type LabelSize = (typeof LABEL_SIZES)[number]

/** Tape figures by measure id, mm, garment laid flat (a chest is pit to pit, not the girth). */
export type Measures = Readonly<Record<string, Mm>>

/** How the garment is taken apart: `cut` beside its seams and hems, which are lost; `unpicked`, which keeps them, creased. */
export type Opening = 'cut' | 'unpicked'

/** One tape figure of a kind. Names shown to people are in ui/words under the same id. */
export interface MeasureSpec {
  readonly id: string
  /** Plausible range; outside it the figure is questioned, not refused. */
  readonly least: Mm
  readonly most: Mm
  /** Starting value by the size on the label. */
  readonly start: Readonly<Record<LabelSize, Mm>>
  /** Asked only when this trait holds. */
  readonly when?: string
}

/** A yes/no fact of how this garment is made that changes its panels: `side-seams`, `pockets`, … Words in ui/words. */
export interface TraitSpec {
  readonly id: string
  readonly usual: boolean
}

/** A garment laid flat as it is worn, for the drawing beside the measures. Units mm, y up. */
export interface Figure {
  /** Filled shapes, back to front. */
  readonly shapes: readonly Polygon[]
  /** Thin lines: seams, hems, plackets. */
  readonly seams: readonly (readonly Point[])[]
  /** Where the tape lies for each measure: from one point to the other. */
  readonly tapes: readonly { readonly measure: string; readonly from: Point; readonly to: Point }[]
}

/** What an edge of a panel was on the garment; decides what is lost there. */
export type EdgeWas = 'seam' | 'hem' | 'fold' | 'raw' | 'selvedge'

/** A loss that comes with the garment itself, not marked by the user. */
export interface BuiltInFlaw {
  readonly kind: 'seam' | 'pocket' | 'placket' | 'dart' | 'zip' | 'casing'
  readonly outline: Polygon
}

/** One flat region the opened garment yields, losses at its edges already taken off. Grain along +y. */
export interface PanelShape {
  /** Unique in the garment: `front`, `back`, `sleeve-left`. Words in ui/words. */
  readonly id: string
  readonly outline: Polygon
  /** What edge k (from point k to the next) was on the garment. Same length as `outline`. */
  readonly edges: readonly EdgeWas[]
  readonly flaws: readonly BuiltInFlaw[]
}

/** The contract of a kind; garments/README.md says more. */
export interface GarmentKind {
  readonly id: KindId
  readonly measures: readonly MeasureSpec[]
  readonly traits: readonly TraitSpec[]
  /** Pairs of measures whose first must be less than the second: otherwise there is no such garment. */
  readonly less: readonly (readonly [string, string])[]
  /** The drawing for these measures. Total: any positive measures give some drawing. */
  figure(measures: Measures, traits: Traits): Figure
  /** The panels it is sewn from, before opening costs anything. Total, but a draft may cross itself: then no panel comes of it. */
  drafts(measures: Measures, traits: Traits): readonly PanelDraft[]
}

export type Traits = Readonly<Record<string, boolean>>
