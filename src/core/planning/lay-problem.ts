import type { ClothRole, Faces, Grain, MirrorRule, Stretch, Surface } from '../base/terms.ts'
import type { Deg, Mm } from '../base/units.ts'
import type { Polygon } from '../geometry/types.ts'

/**
 * The question "can these pieces be cut from these panels?", in the terms of the trade. The file format
 * `cutworth-problem/1` is this model written down; readers/problem-file fills in its defaults.
 */
export interface LayProblem {
  readonly name: string
  /** Least distance between two pieces; a piece may touch a panel's edge and a flaw's edge. */
  readonly clearance: Mm
  /** Time the search may take unless the caller says otherwise. */
  readonly seconds: number
  readonly panels: readonly LayPanel[]
  readonly pieces: readonly LayPiece[]
}

export interface LayPanel {
  readonly id: string
  /** Grain runs along +y. */
  readonly outline: Polygon
  readonly flaws: readonly Polygon[]
  /** null: not measured. */
  readonly stretch: Stretch | null
  readonly surface: Surface
  readonly faces: Faces
  /** Which cloth this is; a piece goes only onto panels of the same cloth. null matches anything. */
  readonly cloth: ClothRole | null
}

export interface LayPiece {
  readonly id: string
  readonly count: number
  /** Cut outline, allowances included; the piece's head is +y. */
  readonly outline: Polygon
  readonly mirror: MirrorRule
  readonly grain: Grain
  /** A list of degrees that replaces what `grain` gives. null: by `grain`. */
  readonly turns: readonly Deg[] | null
  /** Degrees by which each turn may be off, 0 to 10. */
  readonly tilt: Deg
  /** Least stretch along the piece's own x (across) and y (along). */
  readonly needs: Stretch
  /** `any`: pile and one-way prints do not matter to this piece. */
  readonly surface: 'as-panel' | 'any'
  readonly cloth: ClothRole | null
  readonly optional: boolean
}
