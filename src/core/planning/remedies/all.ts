import { againstPile } from './against-pile.ts'
import { biasCut } from './bias-cut.ts'
import { join } from './join.ts'
import { largerSize } from './larger-size.ts'
import { mendFlaw } from './mend-flaw.ts'
import { narrowerHem, narrowerSeams } from './narrower-allowances.ts'
import { otherGarment } from './other-garment.ts'
import { otherVersion } from './other-version.ts'
import { quarterTurn } from './quarter-turn.ts'
import type { RemedyKind, RemedyMaker } from './remedy.ts'
import { smallerSize } from './smaller-size.ts'
import { tilt } from './tilt.ts'
import { unpick } from './unpick.ts'
import { useOwnHem } from './use-own-hem.ts'

/**
 * Every remedy, cheapest to her first: what nobody sees, then what costs work, then what shows on the finished thing,
 * then what takes another garment, and last what makes another thing.
 */
export const REMEDIES: readonly RemedyMaker[] = [
  tilt,
  quarterTurn,
  narrowerSeams,
  narrowerHem,
  useOwnHem,
  unpick,
  mendFlaw,
  join,
  againstPile,
  biasCut,
  largerSize,
  otherGarment,
  otherVersion,
  smallerSize,
]

/** Cheap enough to be asked for two at a time. */
export const CHEAP: readonly RemedyKind[] = [
  'tilt',
  'quarter-turn',
  'narrower-seams',
  'narrower-hem',
  'own-hem',
  'unpick',
  'join',
]
