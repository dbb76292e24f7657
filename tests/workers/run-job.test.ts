import { describe, expect, it } from 'vitest'
import type { PatternPiece } from '../../src/core/patterns/pattern.ts'
import { answerLay } from '../../src/core/planning/answer-lay.ts'
import type { Lay } from '../../src/core/planning/lay.ts'
import type { LayProblem } from '../../src/core/planning/lay-problem.ts'
import type { JobRequest, WorkerReply } from '../../src/workers/protocol.ts'
import { runJob } from '../../src/workers/run-job.ts'
import { answered, asking, boxPiece, measuredCloth, patternOf } from '../support/check-questions.ts'
import { freely, within } from '../support/lay-problems.ts'
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

/** A pattern of one rectangle in two sizes, asked in the larger of 300 × 150, and a cloth so long. */
function asked(width: number) {
  const shapes = Object.fromEntries(
    [200, 300].map((side, k) => [['S', 'M'][k], { form: 'box', width: side, height: 150, allowance: 0 }]),
  ) as PatternPiece['shapes']
  const pattern = patternOf([boxPiece('front', 300, 150, { shapes, grain: 'either' })], { sizes: ['S', 'M'] })
  const question = asking(pattern, measuredCloth(width, 200))
  return { question, answer: answered(question, within(5)), doubt: 8 }
}

describe('a spare job', () => {
  it('tells every better lay and ends with the best, going on from what is known', () => {
    const problem = squares(100, 200)
    const first = answerLay(problem, { ...freely(), spareAsked: 20 })
    expect(first).toMatchObject({ spare: 20, spareIs: 'at-least' })
    const replies = repliesTo({
      kind: 'spare',
      asks: { problem, lay: first, stretchLeft: 0 },
      limits: LIMITS,
    })
    const spares = replies.map((reply) =>
      reply.type === 'progress' && 'spare' in reply.progress ? reply.progress.spare : 0,
    )
    expect(spares.slice(0, -1).every((spare, k) => (spare ?? 0) >= (spares[k - 1] ?? 20))).toBe(true)
    const done = replies.at(-1)
    expect(done).toMatchObject({ type: 'done', answer: { verdict: 'fits', spareIs: 'found' } })
    const { spare } = (done?.type === 'done' ? done.answer : null) as Lay
    expect(spare).toBeGreaterThan(45)
    expect(spare).toBeLessThanOrEqual(50.01)
  })
})

describe('a remedies job', () => {
  it('tells every outcome, the spare no further than what makes it sure, and then ends', () => {
    const replies = repliesTo({ kind: 'remedies', asks: asked(280), limits: LIMITS })
    expect(replies).toMatchObject([
      {
        type: 'progress',
        progress: {
          rank: 0,
          remedy: { steps: [{ kind: 'smaller-size', size: 'S' }] },
          answer: { lay: { verdict: 'fits', spare: 8 } },
        },
      },
      { type: 'done', answer: null },
    ])
  })

  it('of a question that fits only ends', () => {
    expect(repliesTo({ kind: 'remedies', asks: asked(400), limits: LIMITS })).toEqual([
      { type: 'done', answer: null },
    ])
  })
})

describe('a measures job', () => {
  it('tells the outcome of every measure and then ends', () => {
    const replies = repliesTo({ kind: 'measures', asks: asked(305), limits: LIMITS })
    expect(replies).toMatchObject([
      { type: 'progress', progress: { measure: 'cloth-width', by: -8, binds: true } },
      { type: 'progress', progress: { measure: 'cloth-length', by: -8, binds: false } },
      { type: 'done', answer: null },
    ])
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

describe('a brief job', () => {
  it('tells figures as they become finer, the last of which is its answer', () => {
    const { question } = asked(300)
    const { pattern, version, size } = question
    const asks = {
      pattern,
      version,
      size,
      kind: 'cloth',
      roles: null,
      clearance: 0,
      doubt: 0,
      units: 'cm',
    } as const
    const replies = repliesTo({ kind: 'brief', asks, limits: LIMITS })
    const [last, done] = replies.slice(-2)
    expect(replies.length).toBeGreaterThan(2)
    expect(last).toMatchObject({ type: 'progress', progress: { enough: [{ width: 900 }, {}, {}] } })
    expect(done).toMatchObject({
      type: 'done',
      answer: { ok: true, value: last?.type === 'progress' && last.progress },
    })
  })
})
