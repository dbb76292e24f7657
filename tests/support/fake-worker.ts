import { vi } from 'vitest'
import type { SolverWorker } from '../../src/workers/desk.ts'
import type { JobRequest, WorkerReply } from '../../src/workers/protocol.ts'

/** Stands in for a solver worker: keeps what it is asked, and answers when the test says so. */
export class FakeWorker implements SolverWorker {
  onmessage: Worker['onmessage'] = null
  onerror: Worker['onerror'] = null
  onmessageerror: Worker['onmessageerror'] = null
  readonly asked: JobRequest[] = []
  ended = false

  postMessage(message: unknown): void {
    // As the real one: refuses what cannot be copied.
    this.asked.push(structuredClone(message) as JobRequest)
  }

  terminate(): void {
    this.ended = true
  }

  /** Speaks even after its end, as a message already on its way would. */
  say(reply: WorkerReply): void {
    this.onmessage?.call(this as unknown as Worker, { data: reply } as MessageEvent<WorkerReply>)
  }

  crash(message: string): void {
    this.onerror?.call(this as unknown as Worker, { message } as ErrorEvent)
  }
}

/** Puts fakes in the place of the page's workers. Those that come are in the list, in order. */
export function stubWorkers(): FakeWorker[] {
  const workers: FakeWorker[] = []
  vi.stubGlobal(
    'Worker',
    class extends FakeWorker {
      constructor() {
        super()
        workers.push(this)
      }
    },
  )
  return workers
}
