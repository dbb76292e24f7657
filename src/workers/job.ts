import type { JobKind, JobRequest, Jobs } from './protocol.ts'

/** A request with the promise that waits for its answer. Settling it twice does nothing the second time. */
export interface Job {
  /** What the worker is to be asked: when the job begins anew, with what is known by then. */
  request(): JobRequest
  /** Higher goes first. */
  readonly priority: number
  onProgress(progress: Jobs[JobKind]['tells']): void
  resolve(answer: Jobs[JobKind]['answers']): void
  reject(reason: unknown): void
}

/** The job of the highest priority, of equals the one that comes first; null when none waits. */
export function firstOf(queue: readonly Job[]): Job | null {
  const top = Math.max(...queue.map(({ priority }) => priority))
  return queue.find(({ priority }) => priority === top) ?? null
}
