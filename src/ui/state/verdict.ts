import type { Stretch } from '../../core/base/terms.ts'
import type { Mm } from '../../core/base/units.ts'
import type { Garment } from '../../core/garments/index.ts'
import type { CheckAnswer } from '../../core/planning/check.ts'
import { type Standing, standing } from '../../core/planning/doubt.ts'

/** How a verdict is shown. `doubt`: fits, but only if what was measured is right; `open`: no way found, nothing proved. */
export type Sign = 'fits' | 'doubt' | 'cannot' | 'open'

/** What stands in the way of a verdict, in the order she would meet it. */
export type Missing = 'pattern' | 'measures' | 'stretch'

export type LiveVerdict =
  | { readonly state: 'waiting'; readonly missing: Missing }
  | { readonly state: 'running'; readonly placed: number; readonly of: number }
  | { readonly state: 'stopped' }
  | { readonly state: 'failed'; readonly what: string | null }
  | {
      readonly state: 'answered'
      readonly sign: Sign
      readonly answer: CheckAnswer
      /** The spare with which it would fit for sure. */
      readonly roomAsked: Mm
      /** Some measures are the label's, not the tape's. */
      readonly byUsual: boolean
      /** Holds on condition that the cloth stretches so far; null: stretch was told or does not matter. */
      readonly ifStretch: Stretch | null
    }

const SIGNS: Readonly<Record<Standing, Sign>> = {
  'fits-with-room': 'fits',
  'fits-if-tape-right': 'doubt',
  'fits-if-gauge-right': 'doubt',
  'fits-if-cloth-serves': 'doubt',
  cannot: 'cannot',
  'not-found': 'open',
}

/** An answer's sign on a garment whose tape figures may each be off by `tapeDoubt`. */
export function signOf(
  answer: Pick<CheckAnswer, 'lay' | 'stretch' | 'match'>,
  garment: Pick<Garment, 'kind' | 'traits'>,
  tapeDoubt: Mm,
): Sign {
  return SIGNS[standing(answer, garment, tapeDoubt)]
}
