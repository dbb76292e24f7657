import { describe, expect, it, vi } from 'vitest'
import { readGarment } from '../../src/readers/model/garment.ts'
import { StorageNewer } from '../../src/storage/errors.ts'
import { closeStore } from '../../src/storage/open-store.ts'
import { readClothRecords } from '../../src/storage/stores/cloth-records.ts'
import { readDraft } from '../../src/storage/stores/draft.ts'
import { putGarment, readGarments } from '../../src/storage/stores/garments.ts'
import { readPatterns } from '../../src/storage/stores/patterns.ts'
import { DEFAULT_SETTINGS, readSettings, writeSettings } from '../../src/storage/stores/settings.ts'
import { UPGRADES } from '../../src/storage/upgrades/all.ts'
import type { Upgrade } from '../../src/storage/upgrades/upgrade.ts'
import { freshName, TEST_GATES, testGarment, testPattern, testStore } from '../support/storage.ts'

const addLabels: Upgrade = async (database, transaction) => {
  database.createObjectStore('labels')
  const garments = transaction.objectStore('garments')
  for (const record of await garments.getAll()) {
    await garments.put({ ...record, value: { ...record.value, note: 'upgraded' } })
  }
}

describe('a first opening', () => {
  it('makes the stores of the newest version', async () => {
    const { database } = await testStore()
    expect(database.version).toBe(UPGRADES.length)
    expect([...database.objectStoreNames]).toEqual([
      'cuts',
      'device',
      'drafts',
      'garments',
      'notions',
      'offcuts',
      'patterns',
      'photos',
      'pictures',
      'projects',
      'removed',
      'reservations',
      'settings',
    ])
  })
})

describe('version 1', () => {
  it('keys garments and patterns by their id, drafts and settings by a fixed name', async () => {
    const { database } = await testStore({ upgrades: UPGRADES.slice(0, 1) })
    const names = ['garments', 'patterns', 'drafts', 'settings'] as const
    const paths = names.map((name) => database.transaction(name).store.keyPath)
    expect(paths).toEqual(['id', 'id', null, null])
  })
})

describe('a store of version 1', () => {
  it('keeps its garments, patterns, draft and settings through every upgrade since', async () => {
    const name = freshName()
    const old = await testStore({ name, upgrades: UPGRADES.slice(0, 1) })
    const stored = { keptAt: 1, changedAt: 2 }
    // As the first version wrote them: what it did not know is not there.
    const { place, photos, boughtOn, gramsPerSquareMetre, usedUp, ...garment } = testGarment()
    await old.database.put('garments', { id: 'g1', value: garment as never, ...stored })
    await old.database.put('patterns', { id: 'p1', value: testPattern(), ...stored })
    await old.database.put('drafts', { kind: 'dress' }, 'check')
    await writeSettings(old, { ...DEFAULT_SETTINGS, units: 'in' })
    closeStore(old)
    const young = await testStore({ name, gates: { ...TEST_GATES, garments: readGarment } })
    expect(young.database.version).toBe(UPGRADES.length)
    expect(await readGarments(young)).toEqual({
      records: [{ id: 'g1', value: testGarment(), ...stored }],
      unreadable: [],
    })
    expect((await readPatterns(young)).records).toEqual([{ id: 'p1', value: testPattern(), ...stored }])
    expect(await readDraft(young)).toEqual({ ok: true, value: { kind: 'dress' } })
    expect(await readSettings(young)).toEqual({ ...DEFAULT_SETTINGS, units: 'in' })
    expect((await readClothRecords(young)).records).toEqual({ cuts: [], offcuts: [], reservations: [] })
  })
})

describe('an upgrade', () => {
  it('runs once, after those before it, on what is stored', async () => {
    const name = freshName()
    const old = await testStore({ name })
    await putGarment(old, testGarment())
    closeStore(old)
    const spied = vi.fn(addLabels)
    const upgrades = [...UPGRADES, spied]
    const young = await testStore({ name, upgrades })
    expect((await readGarments(young)).records).toMatchObject([{ value: { note: 'upgraded' } }])
    closeStore(young)
    closeStore(await testStore({ name, upgrades }))
    expect(spied).toHaveBeenCalledTimes(1)
  })

  it('that fails leaves the old version with all its records', async () => {
    const name = freshName()
    const old = await testStore({ name })
    await putGarment(old, testGarment())
    closeStore(old)
    const failing: Upgrade = async (database, transaction) => {
      await addLabels(database, transaction)
      throw new Error('cannot go on')
    }
    await expect(testStore({ name, upgrades: [...UPGRADES, failing] })).rejects.toThrow('cannot go on')
    const again = await testStore({ name })
    expect(again.database.version).toBe(UPGRADES.length)
    expect((await readGarments(again)).records.map(({ value }) => value)).toEqual([testGarment()])
  })
})

describe('an older app', () => {
  it('that meets a newer store says so and changes nothing', async () => {
    const name = freshName()
    const upgrades = [...UPGRADES, addLabels]
    const young = await testStore({ name, upgrades })
    await putGarment(young, testGarment())
    closeStore(young)
    await expect(testStore({ name })).rejects.toBeInstanceOf(StorageNewer)
    expect((await readGarments(await testStore({ name, upgrades }))).records).toHaveLength(1)
  })
})
