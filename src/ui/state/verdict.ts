import type { Stretch } from '../../core/base/terms.ts'
import type { Mm } from '../../core/base/units.ts'
import type { CheckAnswer } from '../../core/planning/check.ts'
import { type Measured, type Standing, standing, standingOfFit } from '../../core/planning/doubt.ts'

/**
 * How a verdict is shown. `doubt`: fits, but only if what was measured is right; `cannot-if`: cannot, if so; `open`: no way found,
 * nothing proved. What fits and is not known to have too little to spare is `fits`.
 */
export type Sign = 'fits' | 'doubt' | 'cannot' | 'cannot-if' | 'open'

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
      /** How much more is to spare is still being worked out. */
      readonly looking: boolean
      /** Ids of measures that are rare for such a garment: the verdict hangs on them. */
      readonly odd: readonly string[]
      /** Some measures are the label's, not the tape's. */
      readonly byUsual: boolean
      /** Holds on condition that the cloth stretches so far; null: stretch was told or does not matter. */
      readonly ifStretch: Stretch | null
    }

type Answered = Extract<LiveVerdict, { state: 'answered' }>

const SIGNS: Readonly<Record<Standing, Sign>> = {
  'fits-with-room': 'fits',
  'fits-if-tape-right': 'doubt',
  'fits-if-gauge-right': 'doubt',
  'fits-if-cloth-serves': 'doubt',
  'fits-so-far': 'fits',
  'fits-if-measures-right': 'doubt',
  cannot: 'cannot',
  'cannot-if-measures-right': 'cannot-if',
  'not-found': 'open',
}

/** True for an answer that a longer search may better: nothing found yet, or a search for room enough cut short. */
export function canSearchOnFrom(verdict: LiveVerdict): boolean {
  if (verdict.state !== 'answered') return verdict.state === 'stopped' || verdict.state === 'failed'
  return verdict.sign === 'open' || isRoomOpen(verdict)
}

/** True if it fits and it is neither known that there is room enough, nor worked on. */
export function isRoomOpen({ answer, roomAsked, looking }: Answered): boolean {
  return !looking && answer.lay.verdict === 'fits' && standingOfFit(answer.lay, roomAsked) === 'fits-so-far'
}

/** An answer's sign on a garment whose tape figures may each be off by `tapeDoubt`. */
export function signOf(
  answer: Pick<CheckAnswer, 'lay' | 'stretch' | 'match'>,
  garment: Measured,
  tapeDoubt: Mm,
): Sign {
  return SIGNS[standing(answer, garment, tapeDoubt)]
}
