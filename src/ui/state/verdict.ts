import type { Stretch } from '../../core/base/terms.ts'
import type { Mm } from '../../core/base/units.ts'
import type { CheckAnswer } from '../../core/planning/check.ts'
import type { Lay } from '../../core/planning/lay.ts'

/** How a verdict is shown. `doubt`: fits, but by less than the tape may be off; `open`: no way found, nothing proved. */
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
      /** Some measures are the label's, not the tape's. */
      readonly byUsual: boolean
      /** Holds on condition that the cloth stretches so far; null: stretch was told or does not matter. */
      readonly ifStretch: Stretch | null
    }

/** A lay's sign, given how far a tape may be off on a soft garment. A spare that is not known counts as none. */
export function signOf(lay: Lay, tapeDoubt: Mm): Sign {
  if (lay.verdict === 'cannot') return 'cannot'
  if (lay.verdict === 'not-found') return 'open'
  return (lay.spare ?? 0) < tapeDoubt ? 'doubt' : 'fits'
}
