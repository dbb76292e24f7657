import { expect, it, vi } from 'vitest'
import type { SolveControl } from '../../src/core/planning/check.ts'
import type { Lay } from '../../src/core/planning/lay.ts'
import type { WorkerReply } from '../../src/workers/protocol.ts'
import { runJob } from '../../src/workers/run-job.ts'

const LAY: Lay = {
  verdict: 'not-found',
  placements: [],
  reason: null,
  leftOut: [],
  spare: null,
  spareIs: null,
  elapsedMs: 0,
}

let now = 0

// A search that reports every 30 ms for 300 ms: no real one can be relied on to report so often.
vi.mock('../../src/core/planning/answer-lay.ts', () => ({
  answerLay(_problem: unknown, control: SolveControl) {
    for (let placed = 0; placed <= 10; placed++) {
      now = placed * 30
      control.onProgress?.({ placed, of: 10, best: LAY })
    }
    return LAY
  },
}))

it('progress is told at once and then at most ten times a second', () => {
  const replies: WorkerReply[] = []
  const asks = { name: '', clearance: 0, seconds: 1, panels: [], pieces: [] }
  runJob(
    { kind: 'lay', asks, limits: { seed: 1, seconds: 1 } },
    (reply) => replies.push(reply),
    () => now,
  )
  const told = replies.map((reply) =>
    reply.type === 'progress' && 'placed' in reply.progress ? reply.progress.placed : reply.type,
  )
  // At 0, 120 and 240 ms.
  expect(told).toEqual([0, 4, 8, 'done'])
})
