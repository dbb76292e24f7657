import type { ClothRole, Faces, Grain, MirrorRule, Stretch, Surface } from '../base/terms.ts'
import type { Deg, Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'

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
  /**
   * Edges that are finished and worth keeping, as a hem is: edge k runs from point k of the outline to the next. Absent: none.
   */
  readonly finished?: readonly number[]
  /** How deep the finished edges are made up: pieces that sit on none stay so far from them. Absent: 0. */
  readonly finishedDepth?: Mm
  /** Prints or embroideries that some piece shall show. They are no flaws. Absent: none. */
  readonly motifs?: readonly Motif[]
}

export interface Motif {
  /** No other motif of the problem has it. */
  readonly id: string
  readonly outline: Polygon
  /**
   * Where its own up points, as a turn from +y: a piece that shows it lies at this turn to within the piece's `tilt`, turned
   * over or not. Absent: any way up.
   */
  readonly up?: Deg
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
  /**
   * Least stretch along the piece's own x (across) and y (along). A turn within `tilt` of a quarter counts as that
   * quarter; at any other the smaller figure of the cloth counts both ways.
   */
  readonly needs: Stretch
  /** `any`: pile and one-way prints do not matter to this piece. */
  readonly surface: 'as-panel' | 'any'
  readonly cloth: ClothRole | null
  readonly optional: boolean
  /** An edge that lies on a finished edge of its panel, within its length: every copy. Absent: anywhere. */
  readonly sit?: Sitting
  /** What the first copy shows, which of a pair is the one as drawn. Absent: nothing. */
  readonly shows?: ShownMotif
  /**
   * All copies of all pieces with the same text lie at the same turn modulo 180°, to within their tilts; those on one-way
   * surfaces at the same turn. Absent: each copy for itself.
   */
  readonly turnAlike?: string
}

export interface Sitting {
  /** Edge k of the piece's outline, from point k to the next. */
  readonly edge: number
  /** False: only a wish. A lay in which the piece sits is looked for first; no verdict depends on it. */
  readonly must: boolean
}

/** The whole motif lies inside the copy, its centre of area near a point of the piece. */
export interface ShownMotif {
  readonly motif: string
  /** In the coordinates of the piece's outline: turned over, turned and moved with it. */
  readonly at: Point
  /** How far from that point at most. */
  readonly within: Mm
}
