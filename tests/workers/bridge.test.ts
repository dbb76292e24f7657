import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { MeasureOutcome } from '../../src/core/planning/binding-measures.ts'
import type { Lay } from '../../src/core/planning/lay.ts'
import type { LayProblem } from '../../src/core/planning/lay-problem.ts'
import { Solvers } from '../../src/workers/bridge.ts'
import type { AnsweredCheck } from '../../src/workers/protocol.ts'
import { FakeWorker } from '../support/fake-worker.ts'

const LIMITS = { seed: 1, seconds: 1 }
const LAY: Lay = {
  verdict: 'not-found',
  placements: [],
  reason: null,
  leftOut: ['body#1'],
  spare: null,
  spareIs: null,
  elapsedMs: 5,
}

function problem(name: string): LayProblem {
  return { name, clearance: 0, seconds: 1, panels: [], pieces: [] }
}

let workers: FakeWorker[]
let solvers: Solvers

beforeEach(() => {
  vi.useFakeTimers()
  workers = []
  solvers = new Solvers({
    spawn: () => {
      const worker = new FakeWorker()
      workers.push(worker)
      return worker
    },
    most: 2,
    idleMs: 1000,
  })
})

afterEach(() => {
  solvers.close()
  vi.useRealTimers()
})

/** Asks for a lay and notes how it ends, so that a rejection is never unhandled. */
function ask(name: string, { signal = new AbortController().signal, priority = 0 } = {}) {
  const answer = solvers.ask(signal, 'lay', problem(name), { ...LIMITS, priority })
  const ended = answer.then(
    (lay) => ({ lay }),
    (error: Error) => ({ error }),
  )
  return { answer, ended }
}

const namesAsked = (worker: FakeWorker | undefined) =>
  worker?.asked.map((request) => (request.kind === 'lay' ? request.asks.name : request.kind))

const done = { type: 'done', answer: LAY } as const

describe('the pool', () => {
  it('starts no worker before the first job, and no more than it may have', () => {
    expect(workers).toHaveLength(0)
    ask('a')
    expect(workers).toHaveLength(1)
    ask('b')
    ask('c')
    expect(workers).toHaveLength(2)
    expect(workers.map(namesAsked)).toEqual([['a'], ['b']])
  })

  it('resolves with the answer of the worker that did the job', async () => {
    const { answer } = ask('a')
    workers[0]?.say(done)
    expect(await answer).toEqual(LAY)
  })

  it('sends kind, question and limits as they are', () => {
    ask('a')
    expect(workers[0]?.asked).toEqual([{ kind: 'lay', asks: problem('a'), limits: LIMITS }])
  })

  it('uses a free worker again instead of starting another', async () => {
    const { answer } = ask('a')
    workers[0]?.say(done)
    await answer
    ask('b')
    expect(workers.map(namesAsked)).toEqual([['a', 'b']])
  })

  it('ends a worker that has been idle for long enough, and starts a new one after that', async () => {
    const { answer } = ask('a')
    workers[0]?.say(done)
    await answer
    vi.advanceTimersByTime(999)
    expect(workers[0]?.ended).toBe(false)
    vi.advanceTimersByTime(1)
    expect(workers[0]?.ended).toBe(true)
    ask('b')
    expect(workers.map(namesAsked)).toEqual([['a'], ['b']])
  })

  it('never ends a worker for idleness while it works', () => {
    ask('a')
    vi.advanceTimersByTime(60_000)
    expect(workers[0]?.ended).toBe(false)
  })
})

describe('the queue', () => {
  it('keeps the order of asking among equals and lets a higher priority go first', () => {
    ask('running 1', { priority: 1 })
    ask('running 2', { priority: 1 })
    ask('early')
    ask('late')
    ask('urgent', { priority: 1 })
    for (let i = 0; i < 3; i++) workers[0]?.say(done)
    expect(namesAsked(workers[0])).toEqual(['running 1', 'urgent', 'early', 'late'])
  })

  it('takes the worker of the least urgent job for a more urgent one, and begins the other again before its equals', async () => {
    ask('remedies', { priority: 1 })
    const table = ask('table')
    ask('table, next')
    ask('live', { priority: 2 })
    expect(workers.map(({ ended }) => ended)).toEqual([false, true, false])
    expect(namesAsked(workers[2])).toEqual(['live'])
    workers[1]?.say({ type: 'failed', message: 'said too late' })
    workers[2]?.say(done)
    workers[2]?.say(done)
    expect(await table.ended).toEqual({ lay: LAY })
    expect(namesAsked(workers[2])).toEqual(['live', 'table', 'table, next'])
  })

  it('takes no worker from an equal, nor while one is free or may still be started', () => {
    ask('a', { priority: 1 })
    ask('b', { priority: 2 })
    ask('c', { priority: 1 })
    workers[0]?.say(done)
    expect(workers.map(({ ended }) => ended)).toEqual([false, false])
    expect(workers.map(namesAsked)).toEqual([['a', 'c'], ['b']])
  })
})

describe('an abort', () => {
  it('ends the worker at once, rejects with an AbortError, and gives the next job a new worker', async () => {
    const stop = new AbortController()
    const { ended } = ask('a', { signal: stop.signal })
    ask('b')
    ask('waiting')
    stop.abort()
    expect(workers[0]?.ended).toBe(true)
    expect(await ended).toMatchObject({ error: { name: 'AbortError' } })
    expect(workers.map(namesAsked)).toEqual([['a'], ['b'], ['waiting']])
  })

  it('takes a waiting job out of the queue without disturbing a worker', async () => {
    const stop = new AbortController()
    ask('a')
    ask('b')
    const { ended } = ask('unwanted', { signal: stop.signal })
    ask('next')
    stop.abort()
    expect(await ended).toMatchObject({ error: { name: 'AbortError' } })
    expect(workers.map(({ ended }) => ended)).toEqual([false, false])
    workers[0]?.say(done)
    expect(namesAsked(workers[0])).toEqual(['a', 'next'])
  })

  it('before the asking starts nothing', async () => {
    const { ended } = ask('a', { signal: AbortSignal.abort() })
    expect(await ended).toMatchObject({ error: { name: 'AbortError' } })
    expect(workers).toHaveLength(0)
  })

  it('after the answer changes nothing', async () => {
    const stop = new AbortController()
    const { ended } = ask('a', { signal: stop.signal })
    workers[0]?.say(done)
    stop.abort()
    expect(await ended).toEqual({ lay: LAY })
    expect(workers[0]?.ended).toBe(false)
  })

  it('makes the pool deaf to what the ended worker still says', async () => {
    const stop = new AbortController()
    const { ended } = ask('a', { signal: stop.signal })
    stop.abort()
    const second = ask('b')
    workers[0]?.say(done)
    expect(await ended).toHaveProperty('error')
    workers[1]?.say({ type: 'failed', message: 'second' })
    expect(await second.ended).toMatchObject({ error: { message: 'second' } })
  })
})

describe('a failure', () => {
  it('in the job rejects with its message and keeps the worker', async () => {
    const { ended } = ask('a')
    workers[0]?.say({ type: 'failed', message: 'invariant broken' })
    expect(await ended).toMatchObject({ error: { message: 'invariant broken' } })
    ask('b')
    expect(workers.map(namesAsked)).toEqual([['a', 'b']])
  })

  it('of the worker rejects its job and replaces the worker', async () => {
    const { ended } = ask('a')
    ask('b')
    ask('waiting')
    workers[0]?.crash('out of memory')
    expect(await ended).toMatchObject({ error: { message: 'out of memory' } })
    expect(workers[0]?.ended).toBe(true)
    expect(namesAsked(workers[2])).toEqual(['waiting'])
  })

  it('to copy the question rejects that job only', async () => {
    const uncopyable = { ...problem('a'), name: (() => 'a') as unknown as string }
    const answer = solvers.ask(new AbortController().signal, 'lay', uncopyable, LIMITS)
    await expect(answer).rejects.toMatchObject({ name: 'DataCloneError' })
    ask('b')
    expect(workers.map(namesAsked)).toEqual([['b']])
  })

  it('to start a worker rejects the job', async () => {
    const broken = new Solvers({
      spawn: () => {
        throw new Error('no workers here')
      },
    })
    const answer = broken.ask(new AbortController().signal, 'lay', problem('a'), LIMITS)
    await expect(answer).rejects.toThrow('no workers here')
  })
})

describe('progress', () => {
  it('reaches the caller and does not end the job', async () => {
    const seen: number[] = []
    const answer = solvers.ask(new AbortController().signal, 'lay', problem('a'), {
      ...LIMITS,
      onProgress: ({ placed }) => seen.push(placed),
    })
    workers[0]?.say({ type: 'progress', progress: { placed: 1, of: 2, best: LAY } })
    workers[0]?.say({ type: 'progress', progress: { placed: 2, of: 2, best: LAY } })
    workers[0]?.say(done)
    expect(await answer).toEqual(LAY)
    expect(seen).toEqual([1, 2])
  })
})

describe('a job of several outcomes', () => {
  const asks = { question: {}, answer: {}, doubt: 8 } as unknown as AnsweredCheck
  const outcome = (measure: string): MeasureOutcome => ({
    measure,
    by: -8,
    verdict: 'fits',
    spare: 0,
    binds: true,
  })

  it('gives each to the caller as it comes, and none after its abort', async () => {
    const stop = new AbortController()
    const heard: string[] = []
    const answer = solvers.ask(stop.signal, 'measures', asks, {
      ...LIMITS,
      onProgress: ({ measure }) => heard.push(measure),
    })
    workers[0]?.say({ type: 'progress', progress: outcome('chest') })
    workers[0]?.say({ type: 'progress', progress: outcome('hem-width') })
    stop.abort()
    workers[0]?.say({ type: 'progress', progress: outcome('sleeve-length') })
    await expect(answer).rejects.toMatchObject({ name: 'AbortError' })
    expect(heard).toEqual(['chest', 'hem-width'])
  })
})

describe('closing', () => {
  it('ends every worker and rejects running and waiting jobs alike', async () => {
    const asked = ['a', 'b', 'c'].map((name) => ask(name).ended)
    solvers.close()
    expect(workers.map(({ ended }) => ended)).toEqual([true, true])
    for (const ended of await Promise.all(asked))
      expect(ended).toMatchObject({ error: { name: 'AbortError' } })
  })
})

describe('a rest', () => {
  const placed = {
    ...LAY,
    placements: [{ piece: 'body', copy: 1, panel: 'p', turn: 0, mirrored: false, x: 0, y: 0 }],
  }

  it('ends all work, begins none, and afterwards goes on with everything in its order', async () => {
    const [one, two, three] = [ask('one'), ask('two'), ask('three')]
    solvers.rest()
    expect(workers.map(({ ended }) => ended)).toEqual([true, true])
    const four = ask('four')
    expect(workers).toHaveLength(2)
    solvers.wake()
    expect(workers.slice(2).flatMap(namesAsked)).toEqual(['one', 'two'])
    for (const { answer } of [one, two, three, four]) {
      const at = workers.slice(2).find(({ asked }) => asked.length > 0)
      expect(at).toBeDefined()
      for (const worker of workers.slice(2)) worker.say(done)
      await expect(answer).resolves.toEqual(LAY)
    }
    expect(workers.slice(2).flatMap(namesAsked).toSorted()).toEqual(['four', 'one', 'three', 'two'])
  })

  it('is gone on from with the best lay that was told', () => {
    ask('hard')
    workers[0]?.say({ type: 'progress', progress: { placed: 1, of: 2, best: placed } })
    solvers.rest()
    solvers.wake()
    expect(workers[1]?.asked[0]?.limits).toEqual({ ...LIMITS, warmStart: placed.placements })
  })

  it('is gone on from with what is not settled yet, where the asker knows', () => {
    const asks = (names: readonly string[]) => ({ question: {}, from: names }) as never
    let left = ['a', 'b', 'c']
    void solvers
      .ask(new AbortController().signal, 'donors', asks(left), { ...LIMITS, again: () => asks(left) })
      .catch(() => {})
    left = ['c']
    solvers.rest()
    solvers.wake()
    expect(workers[1]?.asked[0]?.asks).toMatchObject({ from: ['c'] })
  })

  it('keeps what was asked to be called off, and does not wake what was', async () => {
    const stop = new AbortController()
    const { ended } = ask('one', { signal: stop.signal })
    solvers.rest()
    stop.abort()
    expect(await ended).toMatchObject({ error: { name: 'AbortError' } })
    solvers.wake()
    expect(workers).toHaveLength(1)
  })
})
