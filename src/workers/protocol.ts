import type { Result } from '../core/base/result.ts'
import type { Mm, Percent } from '../core/base/units.ts'
import type { Garment } from '../core/garments/garment.ts'
import type { Pattern } from '../core/patterns/pattern.ts'
import type { MeasureOutcome } from '../core/planning/binding-measures.ts'
import type { CheckAnswer, CheckQuestion, SolveProgress } from '../core/planning/check.ts'
import type { DonorQuestion } from '../core/planning/donors/asked.ts'
import type { ShareCost } from '../core/planning/donors/blocking.ts'
import type { DonorRow } from '../core/planning/donors/row.ts'
import type { YieldRow } from '../core/planning/donors/yields.ts'
import type { Lay, LayPlacement } from '../core/planning/lay.ts'
import type { LayProblem } from '../core/planning/lay-problem.ts'
import type { RemedyOutcome } from '../core/planning/remedies/solve-remedies.ts'
import type { Making, NewClothLength } from '../core/planning/savings/new-cloth.ts'
import type { BriefQuestion, KindBrief } from '../core/planning/shopping-brief/brief.ts'
import type { ClearSides, ClothFigures } from '../core/stash/cloth-figures.ts'
import type { Taken } from '../core/stash/taken.ts'

/** A question with its answer, and how far a tape figure may be off. */
export interface AnsweredCheck {
  readonly question: CheckQuestion
  readonly answer: CheckAnswer
  readonly doubt: Mm
}

/** A lay that fits, to be found more to spare for. */
export interface LayToSpare {
  readonly problem: LayProblem
  readonly lay: Lay
  /** So many points more of stretch are to be left to every piece that needs any, as the lay leaves them. */
  readonly stretchLeft: Percent
}

/** A garment and what is taken of it. */
export interface GarmentNow {
  readonly garment: Garment
  readonly taken: Taken
}

export interface DonorsAsked {
  readonly question: DonorQuestion
  readonly from: readonly GarmentNow[]
}

/** What a solver worker can be asked, what it tells on its way, and what it answers. Types only: the page and the worker share no code. */
export interface Jobs {
  /** A shop check. Faults when the pattern or garment cannot be made into a lay problem. */
  check: { asks: CheckQuestion; tells: SolveProgress; answers: Result<CheckAnswer> }
  /** A lay problem as it stands in a file. */
  lay: { asks: LayProblem; tells: SolveProgress; answers: Lay }
  /** What a lay has to spare, and the places that have it: every better lay told as it comes, the best at the end. */
  spare: { asks: LayToSpare; tells: Lay; answers: Lay }
  /** What would save a check, every outcome told as it comes. Their spare is only tried, up to what makes the lay sure. */
  remedies: { asks: AnsweredCheck; tells: RemedyOutcome; answers: null }
  /** Which measures the answer hangs on, every outcome told as it comes. */
  measures: { asks: AnsweredCheck; tells: MeasureOutcome; answers: null }
  /** What to look for among garments of one kind, told again whenever a figure is added or finer. */
  brief: { asks: BriefQuestion; tells: KindBrief; answers: Result<KindBrief> }
  /** What each of these garments would yield of a project, every row told as it comes and again when it is known better. */
  donors: { asks: DonorsAsked; tells: DonorRow; answers: null }
  /** One role from several cloths, every way told as it is found: the answers for its garments, by their ids. */
  blocking: {
    asks: DonorsAsked & { readonly rows: readonly DonorRow[] }
    tells: readonly (ShareCost & { readonly garment: string; readonly answer: CheckAnswer })[]
    answers: null
  }
  /** What one garment would yield of these patterns. */
  yields: {
    asks: {
      readonly patterns: readonly Pattern[]
      readonly clearance: Mm
      readonly stretchDoubt: Percent
      readonly from: GarmentNow
    }
    tells: YieldRow
    answers: null
  }
  /** What there is of the cloth of these garments, in their order; with `clear`, whether such a rectangle is free too. */
  cloths: {
    asks: { readonly from: readonly GarmentNow[]; readonly clear: ClearSides | null }
    tells: never
    answers: readonly ClothFigures[]
  }
  /** What a project would take of new cloth of this width. */
  'new-cloth': {
    asks: { readonly making: Making; readonly width: Mm }
    tells: never
    answers: Result<readonly NewClothLength[]>
  }
}

export type JobKind = keyof Jobs

/**
 * How long the search may take, from which seed and from which known lay: the same seed and lay and time enough give
 * the same answer.
 */
export interface SearchLimits {
  readonly seed: number
  readonly seconds: number
  /** The lay of a similar question, for a check or a lay; other jobs have starts of their own. Absent: none. */
  readonly warmStart?: readonly LayPlacement[]
  /** Answers to questions that asked no less, for a check or the spare of one. Absent: none. */
  readonly known?: readonly CheckAnswer[]
  /** For a check or a lay: so much to spare is enough; 0: the lay is wanted, and what is to spare is asked later. Absent: all there is. */
  readonly spareAsked?: Mm
}

/** Page to worker. A worker has one job at a time. */
export type JobRequest = {
  [K in JobKind]: { readonly kind: K; readonly asks: Jobs[K]['asks']; readonly limits: SearchLimits }
}[JobKind]

/** Worker to page: progress any number of times, then one of the other two. */
export type WorkerReply =
  | { readonly type: 'progress'; readonly progress: Jobs[JobKind]['tells'] }
  | { readonly type: 'done'; readonly answer: Jobs[JobKind]['answers'] }
  /** The job threw: a fault in the program, never in the question. */
  | { readonly type: 'failed'; readonly message: string }
