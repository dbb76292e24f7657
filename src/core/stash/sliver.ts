import type { Mm } from '../base/units.ts'

/** Narrower than this is no cloth worth keeping. Common practice, without a source. */
export const SLIVER_WIDTH: Mm = 30
