import type { ClothRole, Stretch } from '../../base/terms.ts'
import type { Deg, Mm, Percent } from '../../base/units.ts'
import type { FlawKind } from '../../garments/garment.ts'
import type { CheckAnswer, CheckQuestion } from '../check.ts'

/**
 * One change to a question, and what it costs her. Figures and ids only: ui/words makes sentences of them. Areas are
 * mm², of cut pieces or of cloth. `pieces` are ids of the question's pattern before the change.
 */
export type RemedyStep =
  /** Pieces lie off the grain by up to `to` degrees instead of `from`. */
  | {
      readonly kind: 'tilt'
      readonly pieces: readonly string[]
      readonly from: Deg
      readonly to: Deg
    }
  /** Pieces may lie crosswise: the cloth gives enough that way too, but drapes otherwise. */
  | { readonly kind: 'quarter-turn'; readonly pieces: readonly string[] }
  /** Seams unpicked and hems let down instead of cut off: hours, and old creases. `gained`: cloth. */
  | { readonly kind: 'unpick'; readonly gained: number }
  /** Seams, or hems, of `from` at the widest become `to`. */
  | {
      readonly kind: 'narrower-seams' | 'narrower-hem'
      readonly pieces: readonly string[]
      readonly from: Mm
      readonly to: Mm
    }
  /** Hems of the garment become hems of these pieces, whose own would be up to `saved` deep: nothing to sew there. */
  | {
      readonly kind: 'own-hem'
      readonly pieces: readonly string[]
      readonly saved: Mm
      /** Those of plain shape, which serve only if their lower edge is to be a hem. Absent: none. */
      readonly lowerEdge?: readonly string[]
    }
  /** A flaw she marked is used after all: patched, covered, worked over, or taken off. */
  | {
      readonly kind: 'mend-flaw'
      readonly flaw: string
      readonly panel: string
      readonly flawKind: FlawKind
      readonly area: number
    }
  /** A pocket that came with the garment is taken off; `trait` says which. The cloth under it is unfaded and pierced. */
  | { readonly kind: 'take-off'; readonly trait: string }
  /** Pieces may lie against the pile or print: the colour will shade. */
  | { readonly kind: 'against-pile'; readonly pieces: readonly string[] }
  /**
   * Pieces are cut on the bias, for the cloth stretches too little for them as measured. `needs`: how far it must give there,
   * in per cent, the most of any of them. Nobody measured it there.
   */
  | { readonly kind: 'bias-cut'; readonly pieces: readonly string[]; readonly needs: Percent }
  /** A piece is made of two. `at`: the line's distance from the lower or left end of the cut piece; `seam`: its length in one copy. */
  | {
      readonly kind: 'join'
      readonly piece: string
      readonly way: 'across' | 'along'
      readonly at: Mm
      readonly seam: Mm
      readonly allowance: Mm
      readonly copies: number
      /** Ids of the parts, lower or left one first. */
      readonly parts: readonly [string, string]
    }
  /** Pieces that must come from another garment. `role`: they are all of that cloth role; null: some of theirs stay here. */
  | {
      readonly kind: 'other-garment'
      readonly pieces: readonly string[]
      readonly role: ClothRole | null
      readonly copies: number
      readonly area: number
    }
  /** Another version. `saved`: area of pieces, negative if it takes more. */
  | { readonly kind: 'other-version'; readonly version: string; readonly saved: number }
  /**
   * A size larger by `up`, for a body of size `body`: `pieces` are wider by themselves, and the cloth need only stretch so far as `needs`,
   * the most of any of them.
   */
  | {
      readonly kind: 'larger-size'
      readonly pieces: readonly string[]
      readonly size: string
      readonly up: number
      readonly body: string
      readonly needs: Stretch
    }
  /** `down`: how many sizes smaller. */
  | { readonly kind: 'smaller-size'; readonly size: string; readonly down: number }

export type RemedyKind = RemedyStep['kind']

/** A changed question that may have an answer. Nothing is claimed until it is solved. */
export interface Remedy {
  /** One, or two together. */
  readonly steps: readonly RemedyStep[]
  readonly question: CheckQuestion
}

/** What each file here exports: the changes of one kind that make sense for a question, cheapest to her first. */
export interface RemedyMaker {
  readonly kinds: readonly RemedyKind[]
  propose(question: CheckQuestion, answer: CheckAnswer): readonly Remedy[]
  /** The step with its cost as the lay found really has it: fewer pieces turned than were allowed to. */
  asLaid?(step: RemedyStep, answer: CheckAnswer): RemedyStep
}
