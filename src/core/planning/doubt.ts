import type { Mm, Percent } from '../base/units.ts'
import { questionedMeasures } from '../garments/faults.ts'
import type { Garment } from '../garments/garment.ts'
import type { KindId, Traits } from '../garments/kind.ts'
import { kindOf } from '../garments/kinds.ts'
import type { CheckAnswer } from './check.ts'
import type { Lay } from './lay.ts'

/**
 * How far a tape figure of a garment laid flat may be off: woven 3 to 5 mm, knit 5 to 10, heavy knit 10 to 15 (common
 * practice). The tape itself adds a millimetre at most (class III, ±(0.6 + 0.4 L) mm, OIML R 35, from memory).
 */
export const TAPE_DOUBT: Mm = 8

/**
 * How a verdict stands when the tape and the gauge may be off. `fits-with-room` is shown as sure; `fits-if-tape-right` asks to measure
 * again, `fits-if-gauge-right` to stretch it again, `fits-if-cloth-serves` whether a cloth made otherwise than the pattern's will do;
 * `fits-so-far`: it is not known whether there is room enough, for the search for more has not come to its end.
 * With a measure that is rare for such a garment neither answer is sure: the figure may be a slip.
 */
export type Standing =
  | 'fits-with-room'
  | 'fits-if-tape-right'
  | 'fits-if-gauge-right'
  | 'fits-if-cloth-serves'
  | 'fits-so-far'
  | 'fits-if-measures-right'
  | 'cannot-if-measures-right'
  | 'cannot'
  | 'not-found'

/**
 * Where an answer stands on a garment whose every measure may be `doubt` too large; its stretch doubt is in the answer. Doubt of
 * the tape is said only of a spare that was found.
 */
export function standing(
  { lay, stretch, match }: Pick<CheckAnswer, 'lay' | 'stretch' | 'match'>,
  garment: Measured,
  doubt: Mm,
): Standing {
  const isOdd = oddMeasures(garment).length > 0
  if (lay.verdict === 'cannot') return isOdd ? 'cannot-if-measures-right' : 'cannot'
  if (lay.verdict === 'not-found') return 'not-found'
  if (isOdd) return 'fits-if-measures-right'
  if (match?.as === 'other') return 'fits-if-cloth-serves'
  if (stretch && stretch.standing !== 'sure') return 'fits-if-gauge-right'
  return standingOfFit(lay, roomAsked(garment, doubt))
}

/** Where a lay that fits stands if so much room is asked, the stretch left out of account. */
export function standingOfFit(
  { spare, spareIs }: Lay,
  room: Mm,
): 'fits-with-room' | 'fits-if-tape-right' | 'fits-so-far' {
  if ((spare ?? 0) >= room) return 'fits-with-room'
  return spareIs === 'found' ? 'fits-if-tape-right' : 'fits-so-far'
}

/** How many points more of stretch an answer leaves to every piece that needs any: a better lay for it must not leave less. */
export function stretchLeft({ stretch }: Pick<CheckAnswer, 'stretch'>, doubt: Percent = 0): Percent {
  return stretch?.standing === 'sure' ? doubt : 0
}

/** A garment as far as a verdict on it hangs on its tape figures. Without measures none of them is odd. */
export type Measured = Pick<Garment, 'kind' | 'traits'> & Partial<Pick<Garment, 'measures'>>

/** Ids of the measures that are rare for such a garment, as a slip of the tape or of a finger is. */
export function oddMeasures({ kind, traits, measures }: Measured): readonly string[] {
  return measures ? questionedMeasures(kindOf(kind), measures, traits) : []
}

/**
 * The spare with which a lay survives any one measure being `doubt` too large, and all of them at once. Spare takes its width
 * off every edge, so a panel loses twice as much from side to side; a half girth that is `doubt` too large makes the
 * panel of an unfolded tube twice that too wide, which is the worst that one measure can do: spare = doubt. Where several
 * measures add up in one edge and all are off the same way, it takes more by the shares below. Independent
 * errors add in squares and would ask for less; the careful figure is kept, since hands err one way.
 */
export function roomAsked({ kind, traits }: Pick<Garment, 'kind' | 'traits'>, doubt: Mm): Mm {
  return doubt * shareOf(kind, traits)
}

/** Found by moving every measure over all plausible garments of each kind; a test does so again. */
function shareOf(kind: KindId, traits: Traits): number {
  switch (kind) {
    case 'tank-top':
      // Neck and strap widths put the armholes where they are.
      return 2
    case 'leggings':
    case 'trousers':
      return 1.25
    case 't-shirt':
    case 'long-sleeved-top':
      return traits['side-seams'] ? 1 : 1.25
    default:
      return 1
  }
}
