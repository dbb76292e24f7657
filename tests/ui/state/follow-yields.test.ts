import { signal } from '@preact/signals'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Garment } from '../../../src/core/garments/garment.ts'
import type { DonorVerdict } from '../../../src/core/planning/donors/row.ts'
import type { Reservation } from '../../../src/core/stash/reservation.ts'
import { solvers } from '../../../src/ui/state/answers.ts'
import { clothRecords } from '../../../src/ui/state/cloth-state.ts'
import { followYields, lookOn, stopLooking } from '../../../src/ui/state/follow-yields.ts'
import { patternShelf } from '../../../src/ui/state/patterns-state.ts'
import { lookState, yieldAsk, yieldParts } from '../../../src/ui/state/stash-yield.ts'
import { testPattern } from '../../support/check-draft.ts'
import { type FakeWorker, stubWorkers } from '../../support/fake-worker.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { testGarment } from '../../support/records.ts'

// The page's pool counts the cores as it is made, which is when it is imported.
vi.hoisted(() => vi.stubGlobal('navigator', { hardwareConcurrency: 1 }))

/** Before a search begins, and before rows that were told are shown. */
const PAUSE = 220
const SHOWN = 120

const shown = signal<readonly Garment[]>([])
let workers: FakeWorker[]
let end: () => void

beforeEach(async () => {
  vi.useFakeTimers()
  workers = stubWorkers()
  patternShelf.put(testPattern())
  clothRecords.value = { cuts: [], offcuts: [], reservations: [] }
  shown.value = ['a', 'b', 'c'].map((id) => testGarment({ id }))
  end = followYields(() => shown.value)
  const { id, versions, sizes } = testPattern()
  yieldAsk.value = { pattern: id, version: versions[0]?.id ?? '', size: sizes[0] ?? '', piece: null }
  await vi.advanceTimersByTimeAsync(PAUSE)
})

afterEach(() => {
  yieldAsk.value = null
  end()
  solvers.close()
  vi.useRealTimers()
})

/** Ids of the garments of every search begun so far. */
function searches(): readonly (readonly string[])[] {
  return workers.flatMap(({ asked }) =>
    asked.map((request) =>
      request.kind === 'donors' ? request.asks.from.map(({ garment }) => garment.id) : [request.kind],
    ),
  )
}

async function tellOf(donor: string, verdict: DonorVerdict): Promise<void> {
  workers.at(-1)?.say({ type: 'progress', progress: { donor, verdict } as never })
  await vi.advanceTimersByTimeAsync(SHOWN)
}

async function searchEnds(): Promise<void> {
  workers.at(-1)?.say({ type: 'done', answer: null })
  await vi.advanceTimersByTimeAsync(SHOWN)
}

function promised(garment: string): Reservation {
  const place = { panel: 'front', turn: 0, mirrored: false, x: 0, y: 0, outline: rectangle(50, 50) }
  const pieces = [{ piece: 'side', copy: 1, ...place }]
  return { id: 'r1', project: 'p1', garment, pieces, clearance: 0, spare: null }
}

/** Ids, part by part. */
function parted() {
  const { yields, cannot, open, waiting } = yieldParts(shown.value)
  const ids = (list: readonly Garment[]) => list.map(({ id }) => id).join('')
  return { yields: ids(yields), cannot: ids(cannot), open: ids(open), waiting: ids(waiting) }
}

describe('the stash, filtered by what its garments would yield', () => {
  it('parts them as the rows come, and calls only what is proved a no', async () => {
    expect(lookState.value).toBe('running')
    expect(parted()).toEqual({ yields: '', cannot: '', open: '', waiting: 'abc' })
    await tellOf('a', 'undecided')
    await tellOf('b', 'cannot')
    expect(parted()).toEqual({ yields: '', cannot: 'b', open: '', waiting: 'ac' })
    await tellOf('a', 'fits')
    await tellOf('c', 'not-found')
    expect(parted()).toEqual({ yields: 'a', cannot: 'b', open: 'c', waiting: '' })
    await searchEnds()
    expect(lookState.value).toBe('ended')
    expect(searches()).toEqual(['abc'.split('')])
  })

  it('leaves open what was not looked at when time is over', async () => {
    await tellOf('a', 'undecided')
    await searchEnds()
    expect(parted()).toEqual({ yields: '', cannot: '', open: 'abc', waiting: '' })
  })

  it('stops when told, and goes on with what is not settled', async () => {
    await tellOf('b', 'fits')
    stopLooking()
    expect(workers.at(-1)?.ended).toBe(true)
    expect(lookState.value).toBe('stopped')
    expect(parted()).toEqual({ yields: 'b', cannot: '', open: 'ac', waiting: '' })
    shown.value = [...shown.value]
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(searches()).toHaveLength(1)
    lookOn()
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(searches()).toEqual([
      ['a', 'b', 'c'],
      ['a', 'c'],
    ])
    expect(parted()).toEqual({ yields: 'b', cannot: '', open: '', waiting: 'ac' })
  })

  it('goes on undisturbed when fewer are shown, and begins anew when more are', async () => {
    shown.value = shown.value.slice(1)
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(searches()).toHaveLength(1)
    expect(workers[0]?.ended).toBe(false)
    await tellOf('c', 'cannot')
    shown.value = [...shown.value, testGarment({ id: 'd' })]
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(searches().at(-1)).toEqual(['b', 'd'])
  })

  it('asks again about a garment whose cloth changed, not about one that was given another name', async () => {
    for (const id of ['a', 'b', 'c']) await tellOf(id, 'fits')
    await searchEnds()
    const [a, b, c] = shown.value as [Garment, Garment, Garment]
    shown.value = [
      { ...a, name: 'best', place: 'box 9' },
      { ...b, measures: { ...b.measures, chest: 555 } },
      c,
    ]
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(searches().slice(1)).toEqual([['b']])
    expect(parted()).toMatchObject({ yields: 'ac', waiting: 'b' })
    await tellOf('b', 'fits')
    await searchEnds()
    clothRecords.value = { cuts: [], offcuts: [], reservations: [promised('c')] }
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(searches().slice(2)).toEqual([['c']])
    expect(parted()).toMatchObject({ yields: 'ab', waiting: 'c' })
  })

  it('keeps what it knows while she looks at a garment', async () => {
    for (const id of ['a', 'b']) await tellOf(id, 'fits')
    end()
    expect(workers[0]?.ended).toBe(true)
    end = followYields(() => shown.value)
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(searches().at(-1)).toEqual(['c'])
    expect(parted()).toMatchObject({ yields: 'ab', waiting: 'c' })
  })

  it('forgets it all with another question, and drops one that the pattern does not answer', async () => {
    await tellOf('a', 'fits')
    const ask = yieldAsk.value
    if (!ask) throw new Error('nothing asked')
    yieldAsk.value = { ...ask, piece: testPattern().pieces[0]?.id ?? '' }
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(parted()).toMatchObject({ yields: '', waiting: 'abc' })
    expect(searches().at(-1)).toEqual(['a', 'b', 'c'])
    yieldAsk.value = { ...ask, piece: 'none such' }
    expect(yieldAsk.value).toBeNull()
    expect(lookState.value).toBe('ended')
  })

  it('says when a search broke off, and tries again when told', async () => {
    workers.at(-1)?.say({ type: 'failed', message: 'out of memory' })
    await vi.advanceTimersByTimeAsync(SHOWN)
    expect(lookState.value).toBe('failed')
    expect(parted()).toMatchObject({ open: 'abc' })
    lookOn()
    await vi.advanceTimersByTimeAsync(PAUSE)
    expect(lookState.value).toBe('running')
    expect(searches()).toHaveLength(2)
  })
})
