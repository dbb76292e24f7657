import type { Deadline } from '../base/deadline.ts'
import type { ClothRole } from '../base/terms.ts'
import type { Mm, Percent } from '../base/units.ts'
import type { Garment } from '../garments/garment.ts'
import type { Pattern } from '../patterns/pattern.ts'
import type { Taken } from '../stash/taken.ts'
import type { ClothMatch } from './cloth-match.ts'
import type { Lay, LayPlacement } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'
import type { MotifWish } from './motif-wish.ts'
import type { StretchFinding } from './stretch-doubt.ts'
import type { WantedCopies } from './wanted-copies.ts'

/** What the shop check asks: can this garment yield this pattern in this size and version? */
export interface CheckQuestion {
  readonly pattern: Pattern
  /** Id of the version. */
  readonly version: string
  readonly size: string
  readonly garment: Garment
  /** Cloth roles asked of this garment: a lining may come from another one. null: every piece of the version. */
  readonly roles: readonly ClothRole[] | null
  /** The user's own gap between pieces; the larger of this and the pattern's counts. */
  readonly clearance: Mm
  /** Ids of pieces whose hem shall be one that the garment has; those that can have none are cut as usual. Absent: none. */
  readonly ownHem?: readonly string[]
  /** A print to show. One on a panel that the garment has not, or for a piece not asked, counts for nothing. Absent: none. */
  readonly motif?: MotifWish
  /**
   * Ids of pieces cut on the bias, whatever their grain is: how far they stretch there nobody measured, so a lay of them is never
   * sure. Absent: none.
   */
  readonly onBias?: readonly string[]
  /** What was cut from the garment and what is promised of it. Absent: it is whole and free. */
  readonly taken?: Taken
  /** Copies still to be laid; absent: all. */
  readonly copies?: WantedCopies
  /**
   * How far the cloth's stretch may be off, in points: too little by no more than that is no proof, and the answer says how it stands.
   * Absent: the figures are taken at their word.
   */
  readonly stretchDoubt?: Percent
}

/** Which way the heads point on a cloth with a pile: the maker's choice, one for the whole role. */
export type Heads = 'up' | 'down'

/** The question written as a lay problem, and the answer to it. */
export interface CheckAnswer {
  /** The problem that `lay` answers: pieces that hang on the stretch doubt need so much less in it. With heads down every panel is written turned by 180°, so that heads are up in the file. */
  readonly problem: LayProblem
  readonly lay: Lay
  readonly heads: Heads
  /** How the stretch stands to what the placed pieces truly need. Absent: none needs any, or no doubt was asked of. */
  readonly stretch?: StretchFinding
  /** How the cloth is made against what the pattern is for. Absent: the pattern does not say. */
  readonly match?: ClothMatch
}

/** How long to search, from which seed, and who listens. */
export interface SolveControl {
  readonly seed: number
  readonly deadline: Deadline
  readonly clock: () => number
  /** Called now and then with the best part-lay so far. */
  readonly onProgress?: (progress: SolveProgress) => void
  /**
   * The lay of a similar problem: if it is one of this problem too, it is the answer, else the search begins there. Pieces and
   * panels that this problem lacks are passed over.
   */
  readonly warmStart?: readonly LayPlacement[]
  /**
   * Answers to questions that asked as much of no more cloth, a larger size or a garment with lesser measures: where their
   * lays hold, they are lays of this question, with no less to spare.
   */
  readonly known?: readonly CheckAnswer[]
  /** So much to spare is enough, and no more is looked for; 0: none is looked for, so none is known. Absent: the most there is. */
  readonly spareAsked?: Mm
  /** A first look of some milliseconds, for many questions one after another. Absent: all that is known, until the deadline. */
  readonly glance?: boolean
}

export interface SolveProgress {
  /** Copies placed, of the copies needed. */
  readonly placed: number
  readonly of: number
  readonly best: Lay
}
