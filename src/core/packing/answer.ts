import type { Deg, Mm } from '../base/units.ts'
import type { Point } from '../geometry/types.ts'
import type { CopyRef, Item, Placement } from './problem.ts'

/** Why a packing problem has no solution; each kind has its proof in packing/proof. Items are indices. */
export interface Refutation {
  /** `area`, `piece`, `group`, or another kind that a file in packing/proof proves. */
  readonly kind: string
  readonly items: readonly number[]
  /** Named figures of the proof: areas in mm², lengths in mm, counts. */
  readonly figures: Readonly<Record<string, number>>
  readonly certificate: Certificate
}

/** What a refutation rests on, as plain data: enough for packing/proof-check to verify it by other means. */
export type Certificate =
  /** The items have more area than the regions that they may lie in. */
  | { readonly by: 'area'; readonly items: readonly number[] }
  /** The items, which may lie in these regions only, have more area than they can reach there. */
  | { readonly by: 'reach'; readonly items: readonly number[]; readonly regions: readonly number[] }
  /** The item has no place anywhere, all it must sit on and show included. */
  | { readonly by: 'no-place'; readonly item: number }
  /** The copies, each the index of its item, cannot be shared out by area and by which two exclude each other. */
  | { readonly by: 'sharing'; readonly copies: readonly number[] }
  /** One list a region: every placement of the items there covers one of its points, and there are more copies than points. */
  | {
      readonly by: 'points'
      readonly items: readonly number[]
      readonly points: readonly (readonly Point[])[]
    }
  /** All that is needed is made of whole squares of this side, and has no solution on them. */
  | { readonly by: 'squares'; readonly unit: Mm }
  /** Items that turn alike have these choices of turns between them, and each leaves no packing. */
  | { readonly by: 'alike'; readonly choices: readonly RefutedChoice[] }
  /** The copies have no choice of cells of this step, turns cut into ranges no wider than `tilt` each way. */
  | { readonly by: 'cells'; readonly copies: readonly number[]; readonly step: Mm; readonly tilt: Deg }

/** One choice of turns: the ways left to every item, as the problem lists them, and why there is no packing in them. */
export interface RefutedChoice {
  readonly ways: readonly Item['ways'][]
  readonly refutation: Refutation
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
