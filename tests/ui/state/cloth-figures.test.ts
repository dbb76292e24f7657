import { signal } from '@preact/signals'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Garment } from '../../../src/core/garments/garment.ts'
import { clothFigures } from '../../../src/core/stash/cloth-figures.ts'
import { type FakeWorker, stubWorkers } from '../../support/fake-worker.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { aCloth, aReservation, laidAt, records } from '../../support/stash.ts'

type Figures = typeof import('../../../src/ui/state/cloth-figures.ts')

let workers: FakeWorker[]
let figures: Figures
let cloth: typeof import('../../../src/ui/state/cloth-state.ts')
let end = () => {}

beforeEach(async () => {
  vi.resetModules()
  workers = stubWorkers()
  figures = await import('../../../src/ui/state/cloth-figures.ts')
  cloth = await import('../../../src/ui/state/cloth-state.ts')
})

afterEach(() => {
  end()
  vi.unstubAllGlobals()
})

const many = (count: number) => Array.from({ length: count }, (_, k) => aCloth({ id: `g${k}` }))

/** Ids of the garments of each batch asked for so far. */
function batches(): readonly (readonly string[])[] {
  return workers.flatMap(({ asked }) =>
    asked.map((request) =>
      request.kind === 'cloths' ? request.asks.from.map(({ garment }) => garment.id) : [request.kind],
    ),
  )
}

/** Has the worker really answer what it was asked last. */
async function answer(): Promise<void> {
  const worker = workers.at(-1)
  const request = worker?.asked.at(-1)
  if (request?.kind !== 'cloths') throw new Error('no figures were asked for')
  const { from, clear } = request.asks
  worker?.say({
    type: 'done',
    answer: from.map(({ garment, taken }) => clothFigures(garment, taken, clear)),
  })
  await Promise.resolve()
  await Promise.resolve()
}

function follow(garments: readonly Garment[], first: readonly Garment[] = []) {
  const wanted = signal({ first, others: garments, clear: null as { width: number; height: number } | null })
  end = figures.followFigures(() => wanted.value)
  return wanted
}

describe('the figures of the cloth', () => {
  it('are worked out by a worker, a batch at a time, what is seen first', async () => {
    const garments = many(60)
    const seen = garments.slice(50, 53)
    follow(garments, seen)
    expect(batches()).toHaveLength(1)
    expect(batches()[0]?.slice(0, 4)).toEqual(['g50', 'g51', 'g52', 'g0'])
    expect(figures.figuresOf(garments[50] as Garment)).toBe(null)
    await answer()
    expect(figures.figuresOf(garments[50] as Garment)?.area).toBeCloseTo(600 * 400)
    while (batches().flat().length < 60) await answer()
    await answer()
    expect(batches().flat().toSorted()).toEqual(garments.map(({ id }) => id).toSorted())
  })

  it('of all but one garment stay when that one is reserved from', async () => {
    const garments = many(5)
    follow(garments)
    await answer()
    const reservation = {
      ...aReservation('r', [laidAt('body', rectangle(200, 300))]),
      garment: 'g3',
    }
    cloth.clothRecords.value = records({ reservations: [reservation] })
    expect(batches()).toEqual([['g0', 'g1', 'g2', 'g3', 'g4'], ['g3']])
    expect(figures.figuresOf(garments[3] as Garment)).toBe(null)
    expect(figures.figuresOf(garments[2] as Garment)?.area).toBeCloseTo(600 * 400)
    await answer()
    expect(figures.figuresOf(garments[3] as Garment)?.area).toBeCloseTo(600 * 400 - 200 * 300)
    // The same records read anew spoil nothing.
    cloth.clothRecords.value = records({ reservations: [structuredClone(reservation)] })
    expect(batches()).toHaveLength(2)
  })

  it('stay when a garment is called otherwise, and go when its cloth is another', async () => {
    const [garment] = many(1) as [Garment]
    const wanted = follow([garment])
    await answer()
    const named = { ...garment, name: 'Sunday best', place: 'chest' }
    wanted.value = { ...wanted.value, others: [named] }
    expect(batches()).toHaveLength(1)
    expect(figures.figuresOf(named)?.area).toBeCloseTo(600 * 400)
    wanted.value = { ...wanted.value, others: [{ ...named, outline: rectangle(100, 100) }] }
    expect(batches()).toHaveLength(2)
  })

  it('say whether a rectangle is free, once it was asked', async () => {
    const [garment] = many(1) as [Garment]
    const wanted = follow([garment])
    await answer()
    expect(figures.hasClearNow(garment, { width: 500, height: 300 })).toBe(null)
    wanted.value = { ...wanted.value, clear: { width: 500, height: 300 } }
    await answer()
    expect(figures.hasClearNow(garment, { width: 500, height: 300 })).toBe(true)
    wanted.value = { ...wanted.value, clear: { width: 500, height: 500 } }
    await answer()
    expect(figures.hasClearNow(garment, { width: 500, height: 500 })).toBe(false)
  })

  it('that break off are not asked for without end, but again when she says so', async () => {
    follow(many(3))
    workers.at(-1)?.crash('no memory')
    await Promise.resolve()
    await Promise.resolve()
    expect(figures.figuresFailed.value).toBe(true)
    expect(batches()).toHaveLength(1)
    figures.tryFiguresAgain()
    expect(batches()).toHaveLength(2)
    await answer()
    expect(figures.figuresFailed.value).toBe(false)
  })
})
