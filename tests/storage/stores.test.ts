import { describe, expect, it } from 'vitest'
import { clearDraft, readDraft, writeDraft } from '../../src/storage/stores/draft.ts'
import { keepGarment, putGarment, readGarments, removeGarment } from '../../src/storage/stores/garments.ts'
import { putPattern, readPatterns, removePattern } from '../../src/storage/stores/patterns.ts'
import { DEFAULT_SETTINGS, readSettings, writeSettings } from '../../src/storage/stores/settings.ts'
import { testGarment, testPattern, testStore } from '../support/storage.ts'

describe('garments', () => {
  it('come back as they were put, the last kept first', async () => {
    let now = 100
    const store = await testStore({ now: () => now })
    const old = testGarment({ id: 'old' })
    const young = testGarment({ id: 'young', flaws: [], price: null })
    await putGarment(store, old)
    now = 200
    await putGarment(store, young)
    expect(await readGarments(store)).toEqual({
      records: [
        { id: 'young', value: young, keptAt: 200, changedAt: 200 },
        { id: 'old', value: old, keptAt: 100, changedAt: 100 },
      ],
      unreadable: [],
    })
  })

  it('keep the time of their keeping when they change', async () => {
    let now = 100
    const store = await testStore({ now: () => now })
    await putGarment(store, testGarment())
    now = 300
    await putGarment(store, testGarment({ note: 'smells of cedar' }))
    const { records } = await readGarments(store)
    expect(records).toMatchObject([{ keptAt: 100, changedAt: 300, value: { note: 'smells of cedar' } }])
  })

  it('are gone once removed, and only they', async () => {
    const store = await testStore()
    await putGarment(store, testGarment({ id: 'a' }))
    await putGarment(store, testGarment({ id: 'b' }))
    await removeGarment(store, 'a')
    await removeGarment(store, 'never there')
    expect((await readGarments(store)).records.map(({ id }) => id)).toEqual(['b'])
  })

  it('that no longer pass the gate are told with the reason and stay stored', async () => {
    const store = await testStore()
    await putGarment(store, testGarment({ id: 'good' }))
    const bad = { id: 'bad', value: { id: 'bad', name: 7 }, keptAt: 1, changedAt: 1 }
    await store.database.put('garments', bad as never)
    const { records, unreadable } = await readGarments(store)
    expect(records.map(({ id }) => id)).toEqual(['good'])
    expect(unreadable).toEqual([
      { store: 'garments', id: 'bad', faults: [{ field: 'name', message: 'must be text' }] },
    ])
    expect(await store.database.get('garments', 'bad')).toEqual(bad)
  })
})

describe('patterns', () => {
  it('are put, changed and removed by id', async () => {
    const store = await testStore()
    await putPattern(store, testPattern())
    await putPattern(store, testPattern({ id: 'p2', name: 'Cap' }))
    await putPattern(store, testPattern({ id: 'p2', name: 'Hat' }))
    await removePattern(store, 'p1')
    expect((await readPatterns(store)).records.map(({ value }) => value)).toEqual([
      testPattern({ id: 'p2', name: 'Hat' }),
    ])
  })
})

describe('the draft', () => {
  it('is null at first, then what was written last, then null again once cleared', async () => {
    const store = await testStore()
    expect(await readDraft(store)).toEqual({ ok: true, value: null })
    // Not awaited one by one: she types faster than the disk writes.
    await Promise.all(['t', 't-', 't-shirt'].map((kind) => writeDraft(store, { kind })))
    expect(await readDraft(store)).toEqual({ ok: true, value: { kind: 't-shirt' } })
    await clearDraft(store)
    expect(await readDraft(store)).toEqual({ ok: true, value: null })
  })

  it('that cannot be read says why and stays stored', async () => {
    const store = await testStore()
    await store.database.put('drafts', { kind: 5 }, 'check')
    expect(await readDraft(store)).toMatchObject({ ok: false, faults: [{ field: 'kind' }] })
    expect(await store.database.get('drafts', 'check')).toEqual({ kind: 5 })
  })
})

describe('keeping the garment just checked', () => {
  it('stores it and clears the draft', async () => {
    const store = await testStore()
    await writeDraft(store, { kind: 't-shirt' })
    await keepGarment(store, testGarment())
    expect((await readGarments(store)).records).toHaveLength(1)
    expect(await readDraft(store)).toEqual({ ok: true, value: null })
  })
})

describe('settings', () => {
  it('are null until first written', async () => {
    const store = await testStore()
    expect(await readSettings(store)).toBeNull()
    const settings = { ...DEFAULT_SETTINGS, units: 'in', inchFraction: 16, tapeDoubt: 5 } as const
    await writeSettings(store, settings)
    expect(await readSettings(store)).toEqual(settings)
  })

  it('fall back one by one where they make no sense, and keep the others', async () => {
    const store = await testStore()
    const odd = { units: 'furlong', inchFraction: 16, theme: 'dark', tapeDoubt: -4, later: true }
    await store.database.put('settings', odd as never, 'all')
    expect(await readSettings(store)).toEqual({ ...DEFAULT_SETTINGS, inchFraction: 16, theme: 'dark' })
  })
})
