import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { CheckAnswer } from '../../../src/core/planning/check.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { solvers } from '../../../src/ui/state/answers.ts'
import { draft, tell } from '../../../src/ui/state/check-state.ts'
import { live, searchLonger, startLiveCheck, stopLiveCheck } from '../../../src/ui/state/live-check.ts'
import { patternShelf } from '../../../src/ui/state/patterns-state.ts'
import { testDraft, testPattern } from '../../support/check-draft.ts'
import { type FakeWorker, stubWorkers } from '../../support/fake-worker.ts'

// The page's pool counts the cores as it is made, which is when it is imported.
vi.hoisted(() => vi.stubGlobal('navigator', { hardwareConcurrency: 2 }))

/** Between two figures and the question, and between the question and the second seed. */
const PAUSE = 220
const FIRST_TRY = 300

let workers: FakeWorker[]
let end: () => void
let length = 800

beforeEach(() => {
  vi.useFakeTimers()
  workers = stubWorkers()
  patternShelf.put(testPattern())
  draft.value = testDraft()
  end = startLiveCheck()
})

afterEach(() => {
  end()
  solvers.close()
  vi.useRealTimers()
})

/** Types a length that nobody has asked about before, and waits until it has been. */
async function typeLength(): Promise<void> {
  length += 1
  tell({ measures: { 'cloth-width': 1000, 'cloth-length': length } })
  await vi.advanceTimersByTimeAsync(PAUSE)
}

function lay(verdict: Lay['verdict'], x: number): Lay {
  const placed = { piece: 'side', copy: 1, panel: 'cloth', turn: 0, mirrored: false, x, y: 0 }
  return {
    verdict,
    placements: verdict === 'fits' ? [placed] : [],
    reason: null,
    leftOut: verdict === 'fits' ? [] : ['side#1'],
    spare: verdict === 'fits' ? 20 : null,
    spareIs: verdict === 'fits' ? 'found' : null,
    elapsedMs: 1,
  }
}

async function say(worker: number, said: Lay): Promise<void> {
  const answer = { problem: {}, lay: said, heads: 'up' } as unknown as CheckAnswer
  workers[worker]?.say({ type: 'done', answer: { ok: true, value: answer } })
  await vi.advanceTimersByTimeAsync(0)
}

const layShown = () => (live.value.state === 'answered' ? live.value.answer.lay : live.value.state)
const starts = (worker: number) => workers[worker]?.asked.map(({ limits }) => limits.warmStart?.[0]?.x)

describe('a figure that changes', () => {
  it('is asked about after a pause, and the search begins with the lay before it', async () => {
    draft.value = testDraft({ version: 'lined' })
    await typeLength()
    expect(starts(0)).toEqual([undefined])
    await say(0, lay('fits', 7))
    expect(layShown()).toEqual(lay('fits', 7))
    await typeLength()
    expect(starts(0)).toEqual([undefined, 7])
  })

  it('leaves nothing of the question before it: its worker is ended and not heard', async () => {
    await typeLength()
    await typeLength()
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    await say(0, lay('fits', 1))
    expect(layShown()).toBe('running')
    await say(1, lay('fits', 2))
    expect(layShown()).toEqual(lay('fits', 2))
  })
})

describe('a lay that is found', () => {
  const atLeast = (spare: number | null): Lay => ({ ...lay('fits', 3), spare, spareIs: 'at-least' })
  const shown = () =>
    live.value.state === 'answered' && [live.value.sign, live.value.answer.lay.spare, live.value.looking]
  const asked = () => workers.flatMap((worker) => worker.asked)
  const tell = async (better: Lay) => {
    workers[0]?.say({ type: 'progress', progress: better })
    await vi.advanceTimersByTimeAsync(0)
  }
  const end = async (better: Lay) => {
    workers[0]?.say({ type: 'done', answer: better })
    await vi.advanceTimersByTimeAsync(0)
  }

  it('is shown before what is to spare is known, and corrected as that is found', async () => {
    await typeLength()
    expect(asked().at(-1)).toMatchObject({ kind: 'check', limits: { spareAsked: 0 } })
    await say(0, atLeast(null))
    expect(shown()).toEqual(['fits', null, true])
    expect(asked().at(-1)).toMatchObject({ kind: 'spare', asks: { lay: { spare: null } } })
    await tell(atLeast(4))
    expect(shown()).toEqual(['fits', 4, true])
    await end({ ...lay('fits', 3), spare: 5, spareIs: 'found' })
    expect(shown()).toEqual(['doubt', 5, false])
  })

  it('stays, with what is known, when the search for more is stopped, which can go on', async () => {
    await typeLength()
    await say(0, atLeast(null))
    await tell(atLeast(4))
    stopLiveCheck()
    expect(workers.at(-1)?.ended).toBe(true)
    expect(shown()).toEqual(['fits', 4, false])
    searchLonger()
    expect(asked().at(-1)).toMatchObject({ kind: 'spare', asks: { lay: { spare: 4 } } })
    expect(shown()).toEqual(['fits', 4, true])
  })

  it('is nothing any more when a figure changes, nor is what is still found for it', async () => {
    await typeLength()
    await say(0, atLeast(null))
    await typeLength()
    expect(workers[0]?.ended).toBe(true)
    await tell(atLeast(4))
    expect(live.value.state).toBe('running')
  })

  it('is never shown with less to spare than that of a shorter cloth', async () => {
    await typeLength()
    await say(0, { ...lay('fits', 3), spare: 12, spareIs: 'found' })
    expect(shown()).toEqual(['fits', 12, false])
    // A longer one, found to have less: the lay of the shorter one is tried on it.
    await typeLength()
    expect(asked().at(-1)?.limits.known).toMatchObject([{ lay: { spare: 12 } }])
    await say(0, { ...lay('fits', 3), spare: 11, spareIs: 'found' })
    expect(shown()).toEqual(['fits', 11, true])
    expect(asked().at(-1)).toMatchObject({ kind: 'spare', limits: { known: [{ lay: { spare: 12 } }] } })
    await end({ ...lay('fits', 3), spare: 12, spareIs: 'found' })
    expect(shown()).toEqual(['fits', 12, false])
  })
})

describe('a check that is not settled soon', () => {
  it('is searched by both workers; what the slower one says after the faster is not shown', async () => {
    await typeLength()
    expect(workers).toHaveLength(1)
    await vi.advanceTimersByTimeAsync(FIRST_TRY)
    expect(workers).toHaveLength(2)
    await say(1, lay('fits', 2))
    expect(layShown()).toEqual(lay('fits', 2))
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    await say(0, lay('cannot', 1))
    expect(layShown()).toEqual(lay('fits', 2))
  })

  it('is stopped on both', async () => {
    await typeLength()
    await vi.advanceTimersByTimeAsync(FIRST_TRY)
    stopLiveCheck()
    expect(workers.map(({ ended }) => ended)).toEqual([true, true])
    await say(0, lay('fits', 1))
    await say(1, lay('fits', 2))
    expect(layShown()).toBe('stopped')
  })

  it('is searched again from seeds that were not tried', async () => {
    await typeLength()
    await vi.advanceTimersByTimeAsync(FIRST_TRY)
    await say(0, lay('not-found', 0))
    await say(1, lay('not-found', 0))
    searchLonger()
    await vi.advanceTimersByTimeAsync(FIRST_TRY)
    const seeds = workers.flatMap(({ asked }) => asked.map(({ limits }) => limits.seed))
    expect(seeds).toHaveLength(4)
    expect(new Set(seeds).size).toBe(4)
  })
})
