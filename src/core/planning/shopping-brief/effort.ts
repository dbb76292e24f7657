import { type Deadline, sooner } from '../../base/deadline.ts'
import type { SolveControl } from '../check.ts'

/** How long it may take and from which seed. */
export type BriefControl = Pick<SolveControl, 'seed' | 'clock' | 'deadline'>

/**
 * Looks at the deadline that one search for a lay may take: one or two tenths of a second where there is none to be found.
 * Four times as many found hardly a lay more.
 */
export const SEARCH_LOOKS = 60
/** The same for the garment just below the least found. */
export const SEARCH_AGAIN_LOOKS = 240
/** Slices of late proofs for one garment. */
export const PROOF_SLICES = 60

/** Shares of the time that is left, in the order of the work. Most briefs end long before. */
export const SHARES = { width: 0.45, length: 0.4, beside: 0.3, proof: 0.5 }

/**
 * A search that may look at its deadline so many times, which is the same amount of work on every machine: the figures of a
 * brief hang on the seed alone unless the time cuts it short. No spare is looked for.
 */
export function searchOf({ seed, deadline }: BriefControl, looks: number): SolveControl {
  return { seed, clock: () => 0, deadline: afterLooks(looks, deadline), spareAsked: 0 }
}

function afterLooks(looks: number, outer: Deadline): Deadline {
  let taken = 0
  return {
    passed: () => ++taken > looks || outer.passed(),
    left: () => (taken > looks || outer.passed() ? 0 : Number.POSITIVE_INFINITY),
  }
}

/** The same search with only a share of the time that is left. */
export function shareOf(control: BriefControl, share: number): BriefControl {
  const { deadline, clock } = control
  return { ...control, deadline: sooner(deadline, share * deadline.left(), clock) }
}
