import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { MeasureOutcome } from '../../../src/core/planning/binding-measures.ts'
import { solvers } from '../../../src/ui/state/answers.ts'
import { type OutcomeSearch, outcomeSearch } from '../../../src/ui/state/outcomes.ts'
import type { AnsweredCheck } from '../../../src/workers/protocol.ts'
import { type FakeWorker, stubWorkers } from '../../support/fake-worker.ts'

const asked = (doubt = 8) => ({ question: {}, answer: {}, doubt }) as unknown as AnsweredCheck
const outcome = (measure: string): MeasureOutcome => ({
  measure,
  by: -8,
  verdict: 'fits',
  spare: 0,
  binds: true,
})

let workers: FakeWorker[]
let search: OutcomeSearch<MeasureOutcome>

beforeEach(() => {
  workers = stubWorkers()
  search = outcomeSearch('measures', 8, ({ measure }) => measure)
})

afterEach(() => {
  solvers.close()
  vi.unstubAllGlobals()
})

const tell = (measure: string) => workers.at(-1)?.say({ type: 'progress', progress: outcome(measure) })
const measures = () => search.outcomes.value.found.map(({ measure }) => measure)

describe('a search with several outcomes', () => {
  it('shows each as it comes, and then that it has ended', async () => {
    const done = search.look(asked())
    expect(workers.at(-1)?.asked).toMatchObject([{ kind: 'measures', limits: { seed: 1, seconds: 8 } }])
    expect(search.outcomes.value.state).toBe('running')
    tell('chest')
    expect(measures()).toEqual(['chest'])
    tell('hem-width')
    workers.at(-1)?.say({ type: 'done', answer: null })
    await done
    expect(search.outcomes.value.state).toBe('ended')
    expect(measures()).toEqual(['chest', 'hem-width'])
  })

  it('keeps what it found when it is stopped, and hears nothing more', async () => {
    const done = search.look(asked())
    tell('chest')
    search.stop()
    tell('hem-width')
    await done
    expect(search.outcomes.value.state).toBe('stopped')
    expect(measures()).toEqual(['chest'])
    expect(workers.at(-1)?.ended).toBe(true)
  })

  it('begins anew for another check, and again after a stop, but not for one it has searched to the end', async () => {
    const first = asked()
    const done = search.look(first)
    tell('chest')
    workers.at(-1)?.say({ type: 'done', answer: null })
    await done
    await search.look(first)
    expect(measures()).toEqual(['chest'])
    expect(search.outcomes.value.state).toBe('ended')
    void search.look({ ...first, doubt: 10 })
    expect(measures()).toEqual([])
    expect(search.outcomes.value.state).toBe('running')
    search.stop()
    void search.look({ ...first, doubt: 10 })
    expect(search.outcomes.value.state).toBe('running')
  })

  it('lets go of one check for the next', async () => {
    const done = search.look(asked())
    tell('chest')
    void search.look(asked())
    await done
    expect(search.outcomes.value).toMatchObject({ state: 'running', found: [] })
  })

  it('says when the worker fails', async () => {
    const done = search.look(asked())
    workers.at(-1)?.say({ type: 'failed', message: 'broken' })
    await done
    expect(search.outcomes.value.state).toBe('failed')
  })
})
