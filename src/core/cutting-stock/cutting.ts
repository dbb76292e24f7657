import type { Mm } from '../base/units.ts'

/**
 * One-dimensional cutting stock with a limited supply of several lengths (Kantorovich 1939; Gilmore and Gomory 1961).
 * Nothing is lost between two cuts: scissors have no kerf.
 */
export interface CuttingProblem {
  /** Lengths to cut, each in one piece. */
  readonly needed: readonly Mm[]
  /** Lengths there are to cut them from. */
  readonly owned: readonly Mm[]
  /** Whether needed length `n` may be cut from owned length `o`, by index; absent: always. */
  readonly mayUse?: (needed: number, owned: number) => boolean
  /** What is left of a cut length counts as used up when it is shorter than this. */
  readonly scrap: Mm
}

/**
 * What a plan costs, in the order in which it is weighed: of two plans the one that is less in the first figure that
 * differs is the better.
 */
export interface CuttingScore {
  /** Total of the needed lengths that no owned length has room for: to be bought. */
  readonly short: Mm
  /** How many those are. */
  readonly shortCount: number
  /** Owned lengths cut into and not used up: good lengths spoilt. */
  readonly spoilt: number
  /** Total left of the lengths cut into. The least of it means that remnants go first and long lengths stay whole. */
  readonly left: Mm
}

export interface CuttingPlan {
  /** For each needed length the index of the owned one that it is cut from; null: it is short. */
  readonly from: readonly (number | null)[]
  readonly score: CuttingScore
  /** True: no plan scores less, by exhaustion or by bound. False: the best that was found before the budget ran out. */
  readonly proved: boolean
}

export const SCORE_ORDER = [
  'short',
  'shortCount',
  'spoilt',
  'left',
] as const satisfies readonly (keyof CuttingScore)[]

/** Negative: `a` is the better plan. */
export function compareScores(a: CuttingScore, b: CuttingScore): number {
  for (const part of SCORE_ORDER) {
    if (a[part] !== b[part]) return a[part] - b[part]
  }
  return 0
}
