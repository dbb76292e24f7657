import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Lay, LayPlacement } from '../../src/core/planning/lay.ts'
import type { LayProblem } from '../../src/core/planning/lay-problem.ts'
import { Solvers } from '../../src/workers/bridge.ts'
import { askRace } from '../../src/workers/race.ts'
import { FakeWorker } from '../support/fake-worker.ts'

const PROBLEM: LayProblem = { name: 'raced', clearance: 0, seconds: 1, panels: [], pieces: [] }
const START: readonly LayPlacement[] = [
  { piece: 'body', copy: 1, panel: 'front', turn: 0, mirrored: false, x: 1, y: 2 },
]

/** A lay that nobody else gives: told apart by its time. */
const lay = (verdict: Lay['verdict'], elapsedMs: number, leftOut: readonly string[] = []): Lay => ({
  verdict,
  placements: [],
  reason: null,
  leftOut,
  spare: null,
  spareIs: verdict === 'fits' ? 'at-least' : null,
  elapsedMs,
})

let workers: FakeWorker[]
let pool: Solvers

function poolOf(most: number): void {
  pool = new Solvers({
    spawn: () => {
      const worker = new FakeWorker()
      workers.push(worker)
      return worker
    },
    most,
  })
}

beforeEach(() => {
  vi.useFakeTimers()
  workers = []
  poolOf(2)
})

afterEach(() => {
  pool.close()
  vi.useRealTimers()
})

const ask = (signal = new AbortController().signal, onProgress = (_: { placed: number }) => {}) => {
  const answer = askRace(pool, signal, 'lay', PROBLEM, {
    seed: 5,
    seconds: 10,
    priority: 2,
    warmStart: START,
    onProgress,
  })
  answer.catch(() => {})
  return answer
}
const say = (worker: number, answer: Lay) => workers[worker]?.say({ type: 'done', answer })
const limits = () => workers.map(({ asked }) => asked.map((request) => request.limits))
const ended = () => workers.map((worker) => worker.ended)

describe('a question that is soon settled', () => {
  it('is asked of one worker only, from the seed and lay given', async () => {
    const answer = ask()
    await vi.advanceTimersByTimeAsync(299)
    expect(limits()).toEqual([[{ seed: 5, seconds: 10, warmStart: START }]])
    say(0, lay('fits', 1))
    expect(await answer).toEqual(lay('fits', 1))
    await vi.advanceTimersByTimeAsync(60_000)
    expect(workers).toHaveLength(1)
  })
})

describe('a question that takes longer', () => {
  it('is asked of another worker too, from another seed and no lay, to end at the same time', async () => {
    ask()
    await vi.advanceTimersByTimeAsync(300)
    expect(limits()[1]).toEqual([{ seed: 1005, seconds: 9.7 }])
  })

  it.each([
    ['fits', 0, 1],
    ['fits', 1, 0],
    ['cannot', 1, 0],
  ] as const)(
    'that %s by worker %i has its answer, and worker %i is ended',
    async (verdict, winner, loser) => {
      const answer = ask()
      await vi.advanceTimersByTimeAsync(300)
      say(winner, lay(verdict, 1))
      expect(await answer).toEqual(lay(verdict, 1))
      expect(workers[winner]?.ended).toBe(false)
      expect(workers[loser]?.ended).toBe(true)
      // What the loser still says reaches nobody: the next question gets its own answer.
      const next = ask()
      say(loser, lay('fits', 2))
      say(winner, lay('cannot', 3))
      expect(await next).toEqual(lay('cannot', 3))
    },
  )

  it('goes on while one is undecided, and ends with the part-lay that leaves out the fewest', async () => {
    const answer = ask()
    await vi.advanceTimersByTimeAsync(300)
    say(0, lay('not-found', 1, ['body#1', 'sleeve#1']))
    await vi.advanceTimersByTimeAsync(100)
    expect(ended()).toEqual([false, false])
    say(1, lay('not-found', 2, ['sleeve#1']))
    expect(await answer).toEqual(lay('not-found', 2, ['sleeve#1']))
  })

  it('takes the answer there is when the others are late', async () => {
    const answer = ask()
    await vi.advanceTimersByTimeAsync(300)
    say(1, lay('not-found', 1, ['body#1']))
    await vi.advanceTimersByTimeAsync(10_400)
    expect(await answer).toEqual(lay('not-found', 1, ['body#1']))
    expect(ended()).toEqual([true, false])
  })

  it('takes the worker of a job in the background, which begins again once it is settled', async () => {
    poolOf(2)
    const table = { ...PROBLEM, name: 'table' }
    const cell = pool.ask(new AbortController().signal, 'lay', table, { seed: 1, seconds: 4 })
    const answer = ask()
    expect(ended()).toEqual([false, false])
    await vi.advanceTimersByTimeAsync(300)
    expect(ended()).toEqual([true, false, false])
    say(2, lay('fits', 1))
    await answer
    expect(workers[2]?.asked.map(({ asks }) => (asks as LayProblem).name)).toEqual(['raced', 'table'])
    say(2, lay('cannot', 2))
    expect(await cell).toEqual(lay('cannot', 2))
  })
})

describe('a worker that breaks', () => {
  it('leaves the answer to the other', async () => {
    const answer = ask()
    await vi.advanceTimersByTimeAsync(300)
    workers[0]?.crash('out of memory')
    say(1, lay('fits', 1))
    expect(await answer).toEqual(lay('fits', 1))
  })

  it('is told of when all break, the one that broke first', async () => {
    const answer = ask()
    await vi.advanceTimersByTimeAsync(300)
    workers[1]?.crash('breaks first')
    await vi.advanceTimersByTimeAsync(1)
    workers[0]?.crash('breaks later')
    await expect(answer).rejects.toThrow('breaks first')
  })
})

describe('an abort', () => {
  it.each([[100], [1000]])('after %i ms ends every worker and starts no other', async (ms) => {
    const stop = new AbortController()
    const heard: number[] = []
    const answer = ask(stop.signal, ({ placed }) => heard.push(placed))
    await vi.advanceTimersByTimeAsync(ms)
    stop.abort()
    await expect(answer).rejects.toMatchObject({ name: 'AbortError' })
    const started = workers.length
    for (const worker of workers)
      worker.say({ type: 'progress', progress: { placed: 1, of: 2, best: lay('not-found', 1) } })
    await vi.advanceTimersByTimeAsync(60_000)
    expect(workers).toHaveLength(started)
    expect(ended()).toEqual(workers.map(() => true))
    expect(heard).toEqual([])
  })
})

describe('progress', () => {
  it('never falls back, whichever worker tells it', async () => {
    const heard: number[] = []
    ask(undefined, ({ placed }) => heard.push(placed))
    await vi.advanceTimersByTimeAsync(300)
    const tell = (worker: number, placed: number) =>
      workers[worker]?.say({ type: 'progress', progress: { placed, of: 9, best: lay('not-found', 1) } })
    tell(0, 4)
    tell(1, 2)
    tell(1, 5)
    tell(0, 4)
    expect(heard).toEqual([4, 5])
  })
})

describe('with a single worker', () => {
  it('there is no race: the answer is that of the seed given', async () => {
    poolOf(1)
    const answer = ask()
    await vi.advanceTimersByTimeAsync(5000)
    expect(limits()).toEqual([[{ seed: 5, seconds: 10, warmStart: START }]])
    say(0, lay('not-found', 1, ['body#1']))
    expect(await answer).toEqual(lay('not-found', 1, ['body#1']))
  })
})
