import type { Deadline } from './deadline.ts'

/** Work in slices, so that whoever drives it can look at a deadline, or do other work, in between. */
export type Slices<T> = Generator<void, T>

/** What the work comes to, done in one go. */
export function ended<T>(slices: Generator<unknown, T>): T {
  for (;;) {
    const { done, value } = slices.next()
    if (done) return value
  }
}

/** What the work comes to, looking at the deadline after every slice; null if that passes first. */
export function endedBy<T>(slices: Generator<unknown, T>, deadline: Deadline): T | null {
  while (!deadline.passed()) {
    const { done, value } = slices.next()
    if (done) return value
  }
  return null
}
