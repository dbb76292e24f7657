import type { MadeAs } from '../../garments/usual-make.ts'
import type { Heads, SolveControl } from '../check.ts'
import { type ClothMatch, matchOf } from '../cloth-match.ts'
import type { Lay } from '../lay.ts'
import type { StretchStanding } from '../stretch-doubt.ts'
import { type Asked, donorProblem } from './asked.ts'
import { type ColourMatch, poorestMatch } from './colour.ts'
import type { Donor } from './donor.ts'
import { answerEitherWay } from './either-way.ts'
import { clothCost, missingArea } from './waste.ts'

/** `undecided`: neither a lay nor a proof yet, and a longer look is still to come; `not-found`: none came of the longest. */
export type DonorVerdict = 'fits' | 'cannot' | 'not-found' | 'undecided'

/** What one donor would yield, as far as is known. */
export interface DonorRow {
  /** Id. */
  readonly donor: string
  readonly verdict: DonorVerdict
  /** Looks taken so far, each longer than the one before. */
  readonly looks: number
  /** The problem that `lay` answers is `donorProblem(asked, donor, heads)`, with needs less where the stretch is just under them or not measured. */
  readonly heads: Heads
  readonly lay: Lay
  readonly colour: ColourMatch
  readonly price: number | null
  /** How it is made against what the pattern is for; null: the pattern does not say. */
  readonly match: ClothMatch | null
  /** How the cloth's stretch stands to what the placed pieces need; null: they need none, or no doubt was asked of. */
  readonly stretch: StretchStanding | null
  /** Of a whole lay, mm²: free area of the panels used that no piece covers. 0 of any other. */
  readonly waste: number
  /** Likewise: what the largest clear rectangle loses. */
  readonly spoils: number
  /** Area of the needed copies without a place, as a share of all that are needed. 0 of a whole lay. */
  readonly missing: number
}

export const UNKNOWN: MadeAs = { makes: [], assumed: false }

/** A look at one donor. `known`: the row of the look before, which this one starts from. */
export function lookAt(
  asked: Asked,
  donor: Donor,
  control: SolveControl,
  known: DonorRow | null,
  isLast: boolean,
): DonorRow {
  const start = known ? { heads: known.heads, placements: known.lay.placements } : null
  const problemFor = (heads: Heads) => donorProblem(asked, donor, heads)
  const limits = { ...control, spareAsked: 0 }
  const answer = answerEitherWay(donor, problemFor, limits, start, asked.stretchDoubt)
  const { lay, heads, problem, stretch } = answer
  const whole = lay.verdict === 'fits'
  return {
    donor: donor.id,
    verdict: lay.verdict === 'not-found' && !isLast ? 'undecided' : lay.verdict,
    looks: (known?.looks ?? 0) + 1,
    heads,
    lay,
    colour: poorestMatch(donor.colour, asked.colours),
    price: donor.price,
    match: matchOf(asked.cloths, donor.made ?? UNKNOWN),
    stretch: stretch?.standing ?? null,
    missing: whole ? 0 : Math.min(1, missingArea(asked.pieces, lay) / asked.area),
    ...(whole ? clothCost(problem, lay) : { waste: 0, spoils: 0 }),
  }
}
