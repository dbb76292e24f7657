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
export const ANY_TURN = { alignments: 12, fineAlignments: 60, fan: 12 }

/** Turns tried within a range of them, besides its middle, ends and half-way: alignments at least so far apart, degrees. */
export const RANGE_TURNS = { most: 8, apart: 0.05 }

/** What `solve` tries before it says that it found nothing, however long its deadline. */
export const EFFORT = {
  rounds: 16,
  runs: 200,
  disruptions: 4,
  patience: { rounds: 60, strikes: 2 },
  bestFits: 4,
}

/** Slices of proofs, some milliseconds each, after each slice of the search. */
export const PROOF_SLICES = 16

/** Constructive lays. */
export const CONSTRUCT = {
  /** Copies times regions of all lays in a row: a lay takes time with both, and with many pushing apart does better. */
  most: 3000,
  /** How much chance disturbs the order of items: each size is multiplied by 1 ± this. */
  noise: 0.35,
}

/** Overlap minimisation. Lengths of steps are shares of the moved item's narrower side. */
export const SEPARATE = {
  /** Positions sampled for one move: all over the domain, and round the present spot. */
  samples: 24,
  nearSamples: 8,
  /** Of the samples over the domain, the share taken from corners of no-fit polygons (touching positions). */
  cornerShare: 0.4,
  /** Options (shape and region) tried in one move besides the present one. */
  options: 3,
  /**
   * Their regions are drawn by room: one that the item would overfill by this share of its area has a chance of 1/e to one
   * with room, and none less than the least.
   */
  fullness: 0.25,
  leastChance: 0.03,
  /** Best samples that are refined. */
  keep: 2,
  /** Coordinate descent: first and last step, growth and shrinkage of the step. */
  firstStep: 0.25,
  lastStep: 0.02,
  /** The last spot alone is refined to this; exact contact does the rest. */
  finestStep: 0.01,
  /** How far from where it begins refinement is quick; it seldom goes farther. */
  focus: 0.5,
  /** Rounds of exact contact after each descent. */
  touches: 4,
  grow: 1.1,
  cut: 0.5,
  /** Weights of pairs that still overlap grow by these factors, the most for the deepest; others decay to 1. */
  growth: { least: 1.2, most: 2 },
  /**
   * Gentler where there are more regions than so many: there a copy has many other places to go, and with heavy weights
   * all of them kept jumping about. 43 pieces on 16 panels had half the overlap after as long.
   */
  manyRegions: 8,
  gentleGrowth: { least: 1.05, most: 1.3 },
  decay: 0.95,
  /** An attempt that lowers the total by less than this share is a strike. */
  progress: 0.02,
  /** Power of the areas in what overlap costs: 0 left big items buried, 0.25 gave 2 % denser strips. */
  areaPower: 0.25,
}

/** Least length of a strip. Shares of the length. */
export const STRIP = {
  /** First and finest shrinkage while exploring. */
  shrinkFirst: 0.03,
  shrinkLast: 0.001,
  /** After a failure, after a success at the first try. */
  shrinkCut: 0.5,
  shrinkGrow: 2,
  /**
   * Rounds without a lower total that end an attempt, and attempts without progress that end a trial. Of 19
   * lays that 107 trials of three attempts found, two find 17, in 78 % of the time.
   */
  coarse: { rounds: 40, strikes: 1 },
  fine: { rounds: 100, strikes: 2 },
  /** Share of the time for exploring; the rest compresses the best lay, first by the first of these steps. */
  explore: 0.8,
  compressFirst: 0.0005,
  compressLast: 0.00001,
  /** Large items, which disruption swaps, are the biggest that make up this share of the area. */
  large: 0.75,
}

/** Spare: insets tried one after another until one fails, then bisection. Lengths in mm. */
export const SPARE = {
  /** The last is the most told: nobody measures cloth with more doubt than this. */
  ladder: [4, 10, 18, 32, 64],
  /** Up to here a verdict may hang on the figure: a failure is tried once more with items turned and laid anew. */
  decisive: 18,
  /** Tape measures are read to a millimetre; beyond what is decisive a tenth will do. */
  precision: 0.5,
  share: 0.1,
  /** A figure beside the answer has to come in tens of milliseconds. */
  patience: { rounds: 10, strikes: 1 },
  anew: { rounds: 4, runs: 1, disruptions: 0, patience: { rounds: 15, strikes: 1 }, bestFits: 0 },
}

/** Depth-first search for lays without gaps. */
export const JIGSAW = {
  mostCopies: 40,
  /** A problem is a jigsaw if its free area is less than this share of its smallest item. */
  tightness: 0.1,
  /** Positions may be off by this much, mm, before overlap minimisation makes them exact. */
  tolerance: 0.4,
  /** Covers take this much more than themselves from the free space, mm. */
  margin: 0.01,
  /** Areas are known to within this, mm²: margins along the edges of some items. */
  areaDoubt: 60,
  /** Moves that make a found lay exact. */
  patience: { rounds: 60, strikes: 2 },
  /** Constructive lays before the search: they seldom close a jigsaw. */
  rounds: 3,
  /** Nodes of the first search; every further one may visit twice as many. */
  nodes: 4000,
}

/**
 * Grid over each no-fit polygon (engine/depth-grid.ts), cells a side, powers of 2: finer ones ask fewer edges a
 * question but take longer to make and more memory.
 */
export const DEPTH_GRID = {
  coarse: 16,
  fine: 32,
  /** Polygons of more edges get the fine one. */
  manyEdges: 24,
  /** Questions after which making the grid pays. */
  worthwhile: 200,
}

/** No-fit polygons held at once; some kilobytes each. */
export const MOST_NO_FITS = 20_000

/** Constructive lays by best fit. */
export const BEST_FIT = {
  /** Outlines nearer than this lie against each other, mm: the inset on both sides and rounding. */
  touch: 0.02,
  /** Large items go first: contact counts in proportion to area to this power. */
  areaPower: 0.35,
  /** Chance changes each item's standing by up to this share. */
  noise: 0.3,
  /** Worth trying only for so many copies, on regions filled at least so far. */
  mostCopies: 16,
  fill: 0.7,
  /** So many times more lays where items may turn anyhow, which overlap minimisation does badly. */
  anyTurn: 6,
  /** Shapes known at which no more are made to lie edge to edge: those known by then have to do. */
  mostShapes: 4000,
  /** Longest edges of each of two items that are tried against each other where they may turn anyhow. */
  edges: 3,
}

/** Items that must sit on a seat or show a spot. All lengths mm, small against the 0.01 mm that a lay may be off. */
export const CONFINED = {
  /** Positions on a seat make a line, which polygon booleans lose; a strip this wide stands for it. */
  seat: { outward: 0.0012, inward: 0.006, beyond: 0.003 },
  /** How much farther than asked a spot's centroid may be from its place: one that must be exactly there has a single position. */
  within: 0.004,
  /** Such items have few places, so they are placed before others this many times their size. */
  urgency: 1000,
}

/** Items that turn alike (packing/alike). */
export const ALIKE = {
  /** Share of the time for a problem whose copies need not turn alike: what it finds mostly does, or is nearly there. */
  share: 0.5,
  /** Where they may turn anyhow, so many turns of the lay found are tried for all. */
  turns: 6,
}
