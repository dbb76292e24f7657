import type { Job } from './job.ts'
import type { WorkerReply } from './protocol.ts'

/** The part of a Worker that the bridge uses. */
export type SolverWorker = Pick<
  Worker,
  'postMessage' | 'terminate' | 'onmessage' | 'onerror' | 'onmessageerror'
>

/** What the pool wants to know of its desks. */
export interface DeskWatch {
  /** The job in hand has ended and another may begin. */
  onFree(): void
  /** The worker is gone: it crashed, or was idle for too long. */
  onGone(desk: Desk): void
}

/** Where one worker sits, with the one job it has in hand. */
export class Desk {
  readonly #worker: SolverWorker
  readonly #watch: DeskWatch
  readonly #idleMs: number
  #idle: ReturnType<typeof setTimeout> | undefined
  #job: Job | null = null

  constructor(worker: SolverWorker, idleMs: number, watch: DeskWatch) {
    this.#worker = worker
    this.#watch = watch
    this.#idleMs = idleMs
    worker.onmessage = ({ data }: MessageEvent<WorkerReply>) => this.#hear(data)
    worker.onerror = (event) => this.#crash(event.message || 'the solver worker could not start')
    worker.onmessageerror = () => this.#crash('the solver worker sent a message that cannot be read')
    this.#rest()
  }

  get job(): Job | null {
    return this.#job
  }

  /** Only at a free desk. Throws, and stays free, when the request cannot be sent. */
  begin(job: Job): void {
    this.#worker.postMessage(job.request())
    clearTimeout(this.#idle)
    this.#job = job
  }

  /** Ends the worker in the midst of its work; nothing it still says is heard. */
  clear(): void {
    this.#job = null
    clearTimeout(this.#idle)
    this.#worker.terminate()
  }

  #hear(reply: WorkerReply): void {
    const job = this.#job
    if (job === null) return
    if (reply.type === 'progress') {
      job.onProgress(reply.progress)
      return
    }
    this.#rest()
    if (reply.type === 'done') job.resolve(reply.answer)
    else job.reject(new Error(reply.message))
    this.#watch.onFree()
  }

  #rest(): void {
    this.#job = null
    this.#idle = setTimeout(() => this.#leave(), this.#idleMs)
  }

  #crash(message: string): void {
    const job = this.#job
    this.#leave()
    job?.reject(new Error(message))
  }

  #leave(): void {
    this.clear()
    this.#watch.onGone(this)
  }
}
