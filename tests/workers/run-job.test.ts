import { describe, expect, it } from 'vitest'
import type { LayProblem } from '../../src/core/planning/lay-problem.ts'
import type { JobRequest, WorkerReply } from '../../src/workers/protocol.ts'
import { runJob } from '../../src/workers/run-job.ts'
import { squares } from '../support/squares.ts'
import { testGarment, testPattern } from '../support/storage.ts'

const LIMITS = { seed: 1, seconds: 5 }

/** Everything the worker says about a job. */
function repliesTo(request: JobRequest): WorkerReply[] {
  const replies: WorkerReply[] = []
  runJob(
    request,
    (reply) => replies.push(structuredClone(reply)),
    () => performance.now(),
  )
  return replies
}

describe('a lay job', () => {
  it('ends with the lay: a smaller square fits, a larger one cannot', () => {
    const fits = repliesTo({ kind: 'lay', asks: squares(100, 200), limits: LIMITS }).at(-1)
    expect(fits).toMatchObject({ type: 'done', answer: { verdict: 'fits', leftOut: [] } })
    const cannot = repliesTo({ kind: 'lay', asks: squares(300, 200), limits: LIMITS }).at(-1)
    expect(cannot).toMatchObject({ type: 'done', answer: { verdict: 'cannot' } })
  })
})

describe('a check job', () => {
  it('whose question makes no problem ends with the faults', () => {
    const asks = {
      pattern: testPattern(),
      version: 'no such version',
      size: 'one',
      garment: testGarment(),
      roles: null,
      clearance: 0,
    }
    const replies = repliesTo({ kind: 'check', asks, limits: LIMITS })
    expect(replies).toMatchObject([{ type: 'done', answer: { ok: false } }])
  })
})

describe('a job that throws', () => {
  it('ends with its message', () => {
    const asks = { ...squares(1, 2), panels: null } as unknown as LayProblem
    const [reply, ...more] = repliesTo({ kind: 'lay', asks, limits: LIMITS })
    expect(reply).toMatchObject({ type: 'failed', message: expect.stringMatching(/null/) })
    expect(more).toEqual([])
  })
})
