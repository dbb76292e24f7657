import type { ClothMake, ClothRole, Grain, MirrorRule, Stretch } from '../base/terms.ts'
import type { Deg, Mm } from '../base/units.ts'
import type { Point } from '../geometry/types.ts'
import type { NotionNeed } from '../notions/notion.ts'

/** A pattern: pieces in sizes, put together in one or more versions. Shipped and typed-in patterns are the same thing. */
export interface Pattern {
  readonly id: string
  readonly name: string
  /** One line: what it makes and for whom. */
  readonly about: string
  /** Size names, smallest first. */
  readonly sizes: readonly string[]
  readonly versions: readonly Version[]
  readonly pieces: readonly PatternPiece[]
  /** Gap to leave between pieces when cutting; a user's setting may raise it. */
  readonly clearance: Mm
  /** How cloth is made that its maker has it for; absent or empty: not said. */
  readonly cloths?: readonly ClothMake[]
  /** Narrowest seam the maker would fall back on when cloth is short; absent: seams stay as drawn. */
  readonly leastAllowance?: Mm
  /** Shallowest hem, likewise. */
  readonly leastHem?: Mm
  /** Most degrees off the grain, likewise, 0 to 10. */
  readonly mostTilt?: Deg
  /** Elastics, trims and fastenings it takes besides cloth; absent: none. */
  readonly notions?: readonly NotionNeed[]
  /** Ids of the cautions to show, as in ui/words: `child-cords`, `small-parts`, … */
  readonly cautions: readonly string[]
}

/** A way to make the pattern that needs another set of pieces. */
export interface Version {
  readonly id: string
  readonly name: string
  /** Ids of the pieces it needs. */
  readonly pieces: readonly string[]
}

export interface PatternPiece {
  readonly id: string
  readonly name: string
  readonly role: ClothRole
  readonly copies: number
  readonly mirror: MirrorRule
  readonly grain: Grain
  /** Degrees the maker lets it lie off the grain, 0 to 10. */
  readonly tilt: Deg
  readonly needs: Stretch
  /** `any`: may lie against the pile. */
  readonly surface: 'as-panel' | 'any'
  readonly optional: boolean
  /**
   * Only true: it may be cut on the bias too, as bands and bindings round an edge are where cloth stretches too little with the grain
   * (common practice). Absent: it keeps to its grain.
   */
  readonly biasToo?: true
  /** Which way a seam may run through it that cuts it in two, when cloth is short; absent: it stays whole. */
  readonly joins?: JoinRule
  /**
   * Pieces of the pattern with the same text are worn side by side and turn alike on the cloth: front and back of a leg.
   * Absent: only the copies of this piece do.
   */
  readonly turnAlike?: string
  /** By size name; every size of the pattern has one. */
  readonly shapes: Readonly<Record<string, PieceShape>>
}

/** `across`: from side to side; `along`: with the grain, through the middle. */
export type JoinRule = 'across' | 'along' | 'either'

/**
 * Finished shape (the seam line) and the allowance outside each edge, mm. Coordinates have the head up (+y).
 * Simple shapes say their allowance once, for all edges; 0 when the figures typed are the cut figures.
 */
export type PieceShape =
  | { readonly form: 'box'; readonly width: Mm; readonly height: Mm; readonly allowance: Mm }
  | {
      readonly form: 'trapezoid'
      readonly top: Mm
      readonly bottom: Mm
      readonly height: Mm
      readonly allowance: Mm
    }
  | { readonly form: 'triangle'; readonly width: Mm; readonly height: Mm; readonly allowance: Mm }
  /** Half a disc, or half an ellipse: flat edge down, `width` across it, `height` high. */
  | { readonly form: 'half-moon'; readonly width: Mm; readonly height: Mm; readonly allowance: Mm }
  | { readonly form: 'circle'; readonly diameter: Mm; readonly allowance: Mm }
  | OutlineShape
  | StripShape

/** Drawn point by point. With `onFold`, the last edge (last point back to the first) is the fold and the piece is unfolded over it. */
export interface OutlineShape {
  readonly form: 'outline'
  readonly points: readonly OutlinePoint[]
  readonly onFold: boolean
}

/** A point of the seam line and the edge that leaves it. */
export interface OutlinePoint {
  readonly at: Point
  /** Bézier control points of the edge that leaves this point; absent: straight. */
  readonly curve?: readonly [Point, Point]
  /** Allowance outside the edge that leaves this point. */
  readonly allowance: Mm
  /** What the allowance of that edge is for; absent: a seam. A hem may be made shallower, a casing may not. */
  readonly use?: 'hem' | 'casing'
  /** Only true: what is sewn there asks for this allowance, as a zip does; it is never narrowed to save cloth. */
  readonly fixed?: true
  /** What the edge is called, told with its notches: “front armhole”, “side”. */
  readonly name?: string
  /** Balance marks along that edge; absent: none. */
  readonly notches?: readonly Notch[]
}

/**
 * A balance mark: where the edge must meet the mark of the edge it is sewn to. One notch in front and two at the back keep
 * the two apart (common practice).
 */
export interface Notch {
  /** Along the seam line from the point that the edge leaves. */
  readonly at: Mm
  /** Notches side by side. */
  readonly count: 1 | 2
}

/** A rectangle by formula: a band, ruffle, tier or strap. Cut width = edge × ratio + lap + both end allowances; height likewise. */
export interface StripShape {
  readonly form: 'strip'
  /** Finished length of the edge it is sewn to. */
  readonly edge: Mm
  /** Flat length over finished length: 2 for gathers of medium cloth, 0.85 for a rib band. */
  readonly ratio: number
  readonly height: Mm
  /** Folded lengthwise: cut height is twice the finished height. */
  readonly folded: boolean
  readonly endAllowance: Mm
  readonly sideAllowance: Mm
  /** How far it reaches past that edge at its right end, for a fastening; absent: it ends with it. */
  readonly lap?: Mm
}
