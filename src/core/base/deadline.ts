/** Tells the time in milliseconds from any fixed moment. Passed in, so that core has no clock of its own. */
export type Clock = () => number

/** When long work must end. */
export interface Deadline {
  /** True once time is up or someone asked to stop. */
  passed(): boolean
  /** Milliseconds left, never negative. */
  left(): number
}

/** A deadline `ms` from now by the given clock. */
export function deadlineAfter(ms: number, clock: Clock): Deadline {
  const end = clock() + ms
  return {
    passed: () => clock() >= end,
    left: () => Math.max(0, end - clock()),
  }
}

/** The earlier of a deadline and `ms` from now: a share of the time for one stage, which ends with the whole. */
export function sooner(deadline: Deadline, ms: number, clock: Clock): Deadline {
  const share = deadlineAfter(Math.min(ms, deadline.left()), clock)
  return { ...share, passed: () => share.passed() || deadline.passed() }
}

/** A deadline that never comes: for work that ends by itself, and for tests that must not depend on time. */
export const NO_DEADLINE: Deadline = { passed: () => false, left: () => Number.POSITIVE_INFINITY }
