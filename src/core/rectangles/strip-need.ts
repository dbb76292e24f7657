import type { Mm } from '../base/units.ts'
import { type StripShape, stripCut, stripFlat } from '../patterns/index.ts'

/** A long rectangle, to be joined of several strips where the cloth is too narrow for it. */
export interface StripNeed {
  readonly name: string
  /** Between the seam lines at its ends; of a ring, round it. */
  readonly flat: Mm
  /** At each end of each strip. */
  readonly endAllowance: Mm
  /** Cut, allowances included. */
  readonly height: Mm
  readonly copies: number
}

/** A band, ruffle, strap or tie of a pattern. */
export function needOfStrip(name: string, strip: StripShape, copies = 1): StripNeed {
  return {
    name,
    flat: stripFlat(strip).width,
    endAllowance: strip.endAllowance,
    height: stripCut(strip).height,
    copies,
  }
}
