import type { Mm } from '../base/units.ts'
import type { EdgeWas } from './kind.ts'

/**
 * What parts of a garment cost, mm. All common practice, without a source: garments differ, and the
 * figures lean to the careful side.
 */

/** Cut beside a seam: the seam, its allowance and the needle holes stay behind. */
export const SEAM_LOSS: Mm = 10

/** A turned hem, from its fold to above the stitches. */
export const HEM_DEPTH: Mm = 25

/** A narrow hem of scarves and bed linen. */
export const NARROW_HEM_DEPTH: Mm = 15

/** An elastic waist: the casing turned over the elastic. */
export const CASING_DEPTH: Mm = 35

/** Selvedges are woven tighter and may be pierced; they are cut off. */
export const SELVEDGE_LOSS: Mm = 10

/** A sewn-on waistband: stiffened, of no use as cloth. */
export const WAISTBAND_DEPTH: Mm = 40

/** Ribbed bands at hem and cuffs of a jumper: another cloth. */
export const RIB_DEPTH: Mm = 60

/** A buttoned shirt cuff: stiffened. */
export const CUFF_DEPTH: Mm = 65

/** A button placket, stiffened and pierced, and how far it reaches past the centre front. */
export const PLACKET_WIDTH: Mm = 35
export const PLACKET_OVERLAP: Mm = 15

/** The slit above a shirt cuff with its binding. */
export const SLEEVE_SLIT = { width: 25, length: 120 } as const

/** Cloth beside a zip that its seam and stitching spoil. */
export const ZIP_WIDTH: Mm = 25

/** Strip lost when the cloth is cut beside this edge. Only hems and casings have a depth of their own. */
export function lossWhenCut(was: EdgeWas, depth: Mm): Mm {
  switch (was) {
    case 'seam':
      return SEAM_LOSS
    case 'hem':
      return depth
    case 'selvedge':
      return SELVEDGE_LOSS
    case 'fold':
    case 'raw':
      return 0
  }
}
