import type { Deadline } from '../base/deadline.ts'
import type { Garment } from '../garments/garment.ts'
import type { Pattern } from '../patterns/pattern.ts'
import type { Lay } from './lay.ts'
import type { LayProblem } from './lay-problem.ts'

/** What the shop check asks: can this garment yield this pattern in this size and version? */
export interface CheckQuestion {
  readonly pattern: Pattern
  readonly version: string
  readonly size: string
  readonly garment: Garment
}

/** How long to search, from which seed, and who listens. */
export interface SolveControl {
  readonly seed: number
  readonly deadline: Deadline
  readonly clock: () => number
  /** Called now and then with the best part-lay so far. */
  readonly onProgress?: (progress: SolveProgress) => void
}

export interface SolveProgress {
  readonly placed: number
  readonly of: number
  readonly best: Lay
}

/** The question written as a lay problem, and the answer to it. */
export interface CheckAnswer {
  readonly problem: LayProblem
  readonly lay: Lay
}
