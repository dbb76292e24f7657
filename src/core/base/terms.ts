import type { Percent } from './units.ts'

/**
 * Words of the trade that several core folders share. They stand in `base` because patterns, cloth and
 * packing may not import one another.
 */

/** How a piece may turn: heads along the grain, quarter turns too, on the bias, or anyhow. */
export type Grain = 'along' | 'either' | 'bias' | 'any'

/** Which copies are turned over: none, exactly half of them, or each as it comes. */
export type MirrorRule = 'none' | 'pairs' | 'free'

/** `one-way`: pile, nap or a one-way print; every head points up the panel (+y). */
export type Surface = 'plain' | 'one-way'

/** How many faces of the cloth may be the right side. */
export type Faces = 1 | 2

/** How cloth is made: knits give by their loops, stretch wovens by elastane, other wovens hardly at all. */
export const CLOTH_MAKES = ['knit', 'woven', 'stretch-woven'] as const
export type ClothMake = (typeof CLOTH_MAKES)[number]

/** Stretch in per cent, across (x) and along (y) the grain, as DESIGN's (stretched − relaxed) / relaxed × 100. */
export interface Stretch {
  readonly across: Percent
  readonly along: Percent
}

/** Cloth role of a piece: `main`, `lining`, `contrast`, `mesh`, `interfacing`, or a name of the user's own. */
export type ClothRole = string
