import type { JobKind, JobRequest, Jobs } from './protocol.ts'

/** A request with the promise that waits for its answer. Settling it twice does nothing the second time. */
export interface Job {
  readonly request: JobRequest
  /** Higher goes first. */
  readonly priority: number
  readonly onProgress: ((progress: Jobs[JobKind]['tells']) => void) | undefined
  resolve(answer: Jobs[JobKind]['answers']): void
  reject(reason: unknown): void
}

/** Takes out the job of the highest priority, of equals the one that has waited longest; null when none waits. */
export function takeFirst(queue: Job[]): Job | null {
  const top = Math.max(...queue.map(({ priority }) => priority))
  const place = queue.findIndex(({ priority }) => priority === top)
  return place < 0 ? null : (queue.splice(place, 1)[0] ?? null)
}
