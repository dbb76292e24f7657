/** Every number that tunes the packing search, with its reason. Lengths in mm, angles in degrees. */

/**
 * How far outlines are drawn in for the search only, so that exact fits have feasible sets with area
 * (engine/shrunk.ts). Four times this is the most by which a lay can be off, and stays below 0.01 mm, the
 * tolerance of the lay format; 30 steps of the polygon library's grid, so slivers survive its rounding.
 */
export const INSET = 0.0015

/** How far the tangents of a clearance arc may reach beyond it: invisible on cloth, and few corners. */
export const CLEARANCE_EXCESS = 0.03

/** Overlap below this counts as none: the rounding of the polygon library. */
export const NO_OVERLAP = 0.0003

/** Shapes that differ by less are one shape: a rectangle turned by 180° is itself. */
export const SAME_SHAPE = 0.0005

/** Turns tried for an item that may turn anyhow: alignments of its longer edges, then an even fan. */
export const ANY_TURN = { alignments: 12, fan: 12 }

/** Constructive lays. */
export const CONSTRUCT = {
  /** Lays tried before overlap minimisation begins; small problems get by with the first few. */
  rounds: 24,
  /** How much chance disturbs the order of items: each size is multiplied by 1 ± this. */
  noise: 0.35,
}
