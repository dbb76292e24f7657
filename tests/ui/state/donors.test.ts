import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { DonorVerdict } from '../../../src/core/planning/donors/row.ts'
import { solvers } from '../../../src/ui/state/answers.ts'
import { newProject } from '../../../src/ui/state/begin-project.ts'
import { bestWays, donorSearch, searchDonors, searchOn, stopDonors } from '../../../src/ui/state/donors.ts'
import { garments } from '../../../src/ui/state/stash-state.ts'
import { testPattern } from '../../support/check-draft.ts'
import { type FakeWorker, stubWorkers } from '../../support/fake-worker.ts'
import { testGarment } from '../../support/records.ts'

// The page's pool counts the cores as it is made, which is when it is imported.
vi.hoisted(() => vi.stubGlobal('navigator', { hardwareConcurrency: 1 }))

const SHOWN = 120

let workers: FakeWorker[]
let end: () => void

beforeEach(async () => {
  vi.useFakeTimers()
  workers = stubWorkers()
  garments.value = ['a', 'b', 'c'].map((id) => testGarment({ id }))
  const project = newProject(testPattern({ copies: 2 }), 'plain', 'M')
  end = searchDonors({ ...project, blocked: ['main'] }, ['main'])
  await vi.advanceTimersByTimeAsync(SHOWN)
})

afterEach(() => {
  end()
  solvers.close()
  vi.useRealTimers()
})

/** What every search begun so far was for, and over which garments. */
function searches(): readonly string[] {
  return workers.flatMap(({ asked }) =>
    asked.map(({ kind, asks }) =>
      'from' in asks && Array.isArray(asks.from)
        ? `${kind} ${asks.from.map(({ garment }) => garment.id).join('')}`
        : kind,
    ),
  )
}

async function say(reply: Parameters<FakeWorker['say']>[0]): Promise<void> {
  workers.at(-1)?.say(reply)
  await vi.advanceTimersByTimeAsync(SHOWN)
}

const tellOf = (donor: string, verdict: DonorVerdict) =>
  say({ type: 'progress', progress: { donor, verdict } as never })
const found = () => {
  const [only] = donorSearch.value
  return only ?? expect.fail('no search')
}

describe('donors for a project', () => {
  it('are no longer looked for when she stops it, and what is settled is not looked at again', async () => {
    expect(found().state).toBe('running')
    await tellOf('a', 'cannot')
    await tellOf('b', 'undecided')
    stopDonors()
    expect(found().state).toBe('stopped')
    expect(workers.at(-1)?.ended).toBe(true)
    searchOn()
    await vi.advanceTimersByTimeAsync(SHOWN)
    expect(searches()).toEqual(['donors abc', 'donors bc'])
    expect(found().state).toBe('running')
    expect([...found().rows.keys()].sort()).toEqual(['a', 'b'])
    await tellOf('c', 'fits')
    await say({ type: 'done', answer: null })
    expect(found().state).toBe('ended')
  })

  it('are looked for again after a fault', async () => {
    await say({ type: 'failed', message: 'out of memory' })
    expect(found().state).toBe('failed')
    searchOn()
    await vi.advanceTimersByTimeAsync(SHOWN)
    expect(found().state).toBe('running')
    expect(searches()).toEqual(['donors abc', 'donors abc'])
  })

  it('share a role that may be blocked only when none yields it whole; the three best ways are shown', async () => {
    for (const id of ['a', 'b', 'c']) await tellOf(id, 'cannot')
    await say({ type: 'done', answer: null })
    expect(searches()).toEqual(['donors abc', 'blocking abc'])
    for (const price of [9, 3, 7, 5]) {
      const share = { garment: `${price}`, answer: {}, colour: 'as-wanted', price, waste: 0, spoils: 0 }
      await say({ type: 'progress', progress: [share, share] as never })
    }
    expect(bestWays(found()).map((way) => way[0]?.price)).toEqual([3, 5, 7])
    await say({ type: 'done', answer: null })
    expect(found().state).toBe('ended')
  })
})
