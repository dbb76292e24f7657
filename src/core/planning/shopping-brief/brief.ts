import type { ClothRole, Stretch } from '../../base/terms.ts'
import type { Mm, Percent } from '../../base/units.ts'
import type { Garment } from '../../garments/garment.ts'
import type { LabelSize } from '../../garments/kind.ts'
import type { MeasuredKind } from '../../garments/telling.ts'
import type { Pattern } from '../../patterns/pattern.ts'
import type { CheckAnswer } from '../check.ts'

/** What to look for before going out: how big must a garment of this kind be to yield the pattern in this size and version? */
export interface BriefQuestion {
  readonly pattern: Pattern
  /** Id of the version. */
  readonly version: string
  readonly size: string
  readonly kind: MeasuredKind
  /** Cloth roles asked of the garment; null: every piece of the version. */
  readonly roles: readonly ClothRole[] | null
  /** The user's own gap between pieces; the larger of this and the pattern's counts. */
  readonly clearance: Mm
  /** How far the tape may be off: 0 takes it at its word. */
  readonly doubt: Mm
  /** How far a stretch measured by hand may be off, in points: what is looked for stretches enough even so. Absent: 0. */
  readonly stretchDoubt?: Percent
  /** Figures are whole steps of this unit's tape. */
  readonly units: 'cm' | 'in'
}

/** The two telling measures of a garment as the tape shows them. */
export interface TwoMeasures {
  readonly width: Mm
  readonly length: Mm
}

/** A garment that does, by its two telling measures. */
export interface Enough extends TwoMeasures {
  /** The whole garment, as the tape shows it: of usual make and proportions, with no more stretch than is needed. */
  readonly garment: Garment
  /** The lay found on it, less the doubt on every measure. */
  readonly answer: CheckAnswer
}

/** What to look for among garments of one kind. */
export interface KindBrief {
  readonly kind: MeasuredKind
  /** The least stretch, as measured by hand, of a cloth that lets every piece lie some way even if the gauge is off by the doubt. */
  readonly stretch: Stretch
  /** The least garment found; after it, one that may be narrower because it is longer. For cloth: one for each width sold. Empty: none found. */
  readonly enough: readonly Enough[]
  /**
   * Proved too small: no garment of this kind and usual proportions yields it up to this width, or, for cloth of this width, up
   * to this length, even if the tape shows too little by the doubt. Between these and `enough` nobody knows.
   */
  readonly tooSmall: readonly TwoMeasures[]
  /** True: all garments of the kind and usual proportions are proved too small. */
  readonly none: boolean
  /** True: at the first of `enough` a pile or one-way print does too. False: no lay found for one. */
  readonly oneWay: boolean
  /** The smallest size on a label from which garments as its makers usually cut them do; null: none, or labels say nothing of the kind. */
  readonly label: LabelSize | null
}
