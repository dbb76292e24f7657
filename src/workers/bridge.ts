import type { Lay } from '../core/planning/lay.ts'
import { Desk, type SolverWorker } from './desk.ts'
import { firstOf, type Job } from './job.ts'
import type { JobKind, JobRequest, Jobs, SearchLimits } from './protocol.ts'

export interface AskOptions<K extends JobKind> extends SearchLimits {
  /**
   * Higher goes first, and where no worker is free it takes that of a lower one, which begins again later and may
   * tell its progress twice. Of equals, the one asked first goes first. 0 unless given.
   */
  readonly priority?: number
  /** Called for every outcome of a job that has several; otherwise some ten times a second at most. */
  readonly onProgress?: (progress: Jobs[K]['tells']) => void
  /** What is left to ask when the job must begin again. Absent: the same; a check or lay begins with the best lay told. */
  readonly again?: () => Jobs[K]['asks']
}

export interface SolversOptions {
  readonly spawn?: () => SolverWorker
  /** How many workers may live at once: as many as there are cores, within reason, unless given. */
  readonly most?: number
  /** How long an idle worker is kept. */
  readonly idleMs?: number
}

/** Each worker holds some ten megabytes of shapes, and more of them warm a phone more than they help. */
const MOST_WORKERS = 4

/** The page's way to the solver: a pool of workers, each started when it is first needed. */
export class Solvers {
  readonly most: number
  readonly #spawn: () => SolverWorker
  readonly #idleMs: number
  readonly #queue: Job[] = []
  readonly #desks = new Set<Desk>()
  #isResting = false

  constructor({ spawn = spawnSolver, most = coresHere(), idleMs = 30_000 }: SolversOptions = {}) {
    this.#spawn = spawn
    this.most = most
    this.#idleMs = idleMs
  }

  /**
   * Has a worker do the job. Rejects with the signal's reason (an AbortError, which callers ignore) as soon as
   * it aborts, and with an Error when the worker fails. A search never looks up from its work, so an abort ends
   * its worker; the next job gets a new one.
   */
  ask<K extends JobKind>(
    signal: AbortSignal,
    kind: K,
    asks: Jobs[K]['asks'],
    { priority = 0, onProgress, again = () => asks, ...limits }: AskOptions<K>,
  ): Promise<Jobs[K]['answers']> {
    return new Promise((resolve, reject) => {
      if (signal.aborted) throw signal.reason
      const onAbort = () => this.#drop(job, signal.reason)
      signal.addEventListener('abort', onAbort)
      const settled = () => signal.removeEventListener('abort', onAbort)
      let best: SearchLimits['warmStart']
      const job: Job = {
        // Kind and question belong together by the signature; the union cannot see that, nor can what comes back.
        request: () =>
          ({ kind, asks: again(), limits: { ...limits, ...(best && { warmStart: best }) } }) as JobRequest,
        priority,
        onProgress: (progress) => {
          best = placedIn(progress) ?? best
          onProgress?.(progress as Jobs[K]['tells'])
        },
        resolve: (answer) => {
          settled()
          resolve(answer as Jobs[K]['answers'])
        },
        reject: (reason) => {
          settled()
          reject(reason)
        },
      }
      this.#queue.push(job)
      this.#handOut()
    })
  }

  /** Ends all workers and rejects whatever is still asked with an AbortError. */
  close(): void {
    const reason = new DOMException('the solvers were closed', 'AbortError')
    const asked = [...this.#queue.splice(0), ...[...this.#desks].flatMap(({ job }) => job ?? [])]
    for (const desk of this.#desks) desk.clear()
    this.#desks.clear()
    for (const job of asked) job.reject(reason)
  }

  /** Ends the work of every worker for now. What is asked, and what is asked meanwhile, waits until `wake`. */
  rest(): void {
    this.#isResting = true
    const busy = [...this.#desks].flatMap(({ job }) => job ?? [])
    for (const desk of this.#desks) desk.clear()
    this.#desks.clear()
    this.#queue.unshift(...busy)
  }

  wake(): void {
    this.#isResting = false
    this.#handOut()
  }

  #handOut(): void {
    if (this.#isResting) return
    for (let job = firstOf(this.#queue); job; job = firstOf(this.#queue)) {
      if (!this.#hasRoom() && !this.#makeRoom(job)) return
      this.#queue.splice(this.#queue.indexOf(job), 1)
      try {
        this.#freeDesk().begin(job)
      } catch (error) {
        job.reject(error)
      }
    }
  }

  #hasRoom(): boolean {
    return this.#desks.size < this.most || [...this.#desks].some(({ job }) => job === null)
  }

  /** Puts the least urgent job in hand back into the queue, if it is less urgent than this one. Only while all desks are busy. */
  #makeRoom({ priority }: Job): boolean {
    const priorityAt = (desk: Desk) => (desk.job as Job).priority
    const [desk] = [...this.#desks].sort((a, b) => priorityAt(a) - priorityAt(b))
    if (!desk || priorityAt(desk) >= priority) return false
    this.#queue.unshift(desk.job as Job)
    this.#clear(desk)
    return true
  }

  #clear(desk: Desk): void {
    desk.clear()
    this.#desks.delete(desk)
  }

  #freeDesk(): Desk {
    const free = [...this.#desks].find(({ job }) => job === null)
    if (free) return free
    const desk = new Desk(this.#spawn(), this.#idleMs, {
      onFree: () => this.#handOut(),
      onGone: (gone) => {
        this.#desks.delete(gone)
        this.#handOut()
      },
    })
    this.#desks.add(desk)
    return desk
  }

  #drop(job: Job, reason: unknown): void {
    const waiting = this.#queue.indexOf(job)
    if (waiting >= 0) this.#queue.splice(waiting, 1)
    for (const desk of this.#desks) {
      if (desk.job === job) this.#clear(desk)
    }
    job.reject(reason)
    this.#handOut()
  }
}

/** The places of the lay that a search has told of; undefined: it told of none. */
function placedIn(progress: Jobs[JobKind]['tells']): SearchLimits['warmStart'] {
  if (!('best' in progress) || progress.best === null || typeof progress.best !== 'object') return undefined
  const { placements } = progress.best as Lay
  return placements.length > 0 ? placements : undefined
}

/** A new solver worker, as the build splits it off. */
function spawnSolver(): SolverWorker {
  return new Worker(new URL('./solver.worker.ts', import.meta.url), { type: 'module' })
}

/** Node of the oldest kind supported has no navigator. */
function coresHere(): number {
  return Math.max(1, Math.min(MOST_WORKERS, globalThis.navigator?.hardwareConcurrency ?? 1))
}
