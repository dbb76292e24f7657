/** Bounds on what a pattern may hold. Nothing a person sews reaches them; they stop slips of the keyboard and hostile files. */
export const PATTERN_LIMITS = {
  /** Longest edge, width or height, mm: a 20 m strip. */
  length: 20_000,
  /** Widest allowance, mm: deeper than any hem. */
  allowance: 500,
  /** Flat over finished length of a strip. */
  ratio: 20,
  /** Degrees off the grain. */
  tilt: 10,
  /** Stretch needed, per cent. */
  stretch: 400,
  copies: 99,
  clearance: 100,
  points: 2_000,
  /** Of one edge. */
  notches: 20,
  pieces: 200,
  sizes: 50,
  versions: 50,
} as const
