import type { CopyRef, Placement } from './problem.ts'

/** Why a packing problem has no solution; each kind has its proof in packing/proof. Items are indices. */
export interface Refutation {
  /** `area`, `piece`, `group`, or another kind that a file in packing/proof proves. */
  readonly kind: string
  readonly items: readonly number[]
  /** Named figures of the proof: areas in mm², lengths in mm, counts. */
  readonly figures: Readonly<Record<string, number>>
}

export type PackingAnswer =
  | {
      readonly verdict: 'fits'
      readonly placements: readonly Placement[]
      readonly leftOut: readonly CopyRef[]
    }
  | { readonly verdict: 'cannot'; readonly refutation: Refutation }
  | {
      readonly verdict: 'not-found'
      readonly placements: readonly Placement[]
      readonly leftOut: readonly CopyRef[]
    }
