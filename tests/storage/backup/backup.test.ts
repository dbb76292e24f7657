import { afterEach, describe, expect, it, vi } from 'vitest'
import { ok } from '../../../src/core/base/result.ts'
import type { Contents } from '../../../src/core/records/record.ts'
import { readBackup } from '../../../src/readers/backup/read-backup.ts'
import { writeBackup } from '../../../src/readers/backup/write-backup.ts'
import { readCut, readOffcut } from '../../../src/readers/model/cut.ts'
import { readGarment } from '../../../src/readers/model/garment.ts'
import { readNotion } from '../../../src/readers/model/notion.ts'
import { readUnfinishedPattern } from '../../../src/readers/model/pattern.ts'
import { readPhoto } from '../../../src/readers/model/photo.ts'
import { readProject } from '../../../src/readers/model/project.ts'
import { readReservation } from '../../../src/readers/model/reservation.ts'
import { knownDevice, readDevice, rememberBackup } from '../../../src/storage/backup/device.ts'
import type { FromFile } from '../../../src/storage/backup/everything.ts'
import { mergeIn, previewMerge } from '../../../src/storage/backup/merge.ts'
import { readEverything } from '../../../src/storage/backup/read-everything.ts'
import { restore, wipe } from '../../../src/storage/backup/restore.ts'
import type { Store } from '../../../src/storage/open-store.ts'
import { testGarment, testPattern } from '../../support/records.ts'
import { testStore } from '../../support/storage.ts'
import {
  contents,
  kept,
  laid,
  rectangle,
  testCut,
  testOffcut,
  testProject,
  testReservation,
} from '../../support/two-devices.ts'

afterEach(() => vi.restoreAllMocks())

const GATES = {
  garments: readGarment,
  patterns: readUnfinishedPattern,
  projects: readProject,
  reservations: readReservation,
  cuts: readCut,
  offcuts: readOffcut,
  notions: readNotion,
  photos: readPhoto,
  draft: (raw: unknown) => ok(raw as never),
}

const JPEG = new Blob([new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])], { type: 'image/jpeg' })
const photo = (id: string) => kept({ id, width: 40, height: 30, takenAt: 5 }, 5)
const newest = {
  id: 'from-tomorrow',
  value: { id: 'from-tomorrow', size: Number.NaN },
  keptAt: 1,
  changedAt: 2,
}

/** One of everything, a record that cannot be read among them. */
const STASH: Contents = {
  ...contents(
    {
      garments: [kept(testGarment({ photos: ['f1'] }), 3)],
      patterns: [kept(testPattern(), 3)],
      projects: [kept(testProject(), 3)],
      reservations: [kept(testReservation({ pieces: [laid('body', 'o1', rectangle(0, 250, 100, 100))] }), 3)],
      cuts: [kept(testCut({ offcuts: ['o1'], pieces: [laid('base', 'front', rectangle(0, 0, 90, 90))] }), 3)],
      offcuts: [kept(testOffcut(), 3)],
      photos: [photo('f1')],
    },
    [{ store: 'garments', id: 'g0', removedAt: 2 }],
  ),
  unread: [{ store: 'notions', id: 'from-tomorrow', record: newest }],
}

let devices = 0
const makeId = () => `device-${++devices}`
const open = (): Promise<Store<never>> => testStore({ gates: GATES as never }) as never

async function fileOf(store: Store<unknown>, madeAt = 10): Promise<FromFile> {
  const { id, common } = await knownDevice(store, makeId)
  return { ...(await readEverything(store)), device: id, madeAt, common }
}

/** Through a real file and back. */
async function throughZip(file: FromFile): Promise<FromFile> {
  const read = readBackup(new Uint8Array(await (await writeBackup(file)).arrayBuffer()))
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.value
}

async function storeWith(stash: Contents): Promise<Store<never>> {
  const store = await open()
  const file = {
    contents: stash,
    pictures: stash.records.photos.map(({ id }) => ({ id, picture: JPEG })),
    drafts: { check: { kind: 'dress' } },
    settings: { units: 'in', dotsPerMm: 5 },
    device: 'elsewhere',
    madeAt: 1,
    common: [],
  }
  await restore(store, file, makeId)
  return store
}

describe('back up, wipe, restore', () => {
  it('brings everything back, what cannot be read and the pictures too', async () => {
    const store = await storeWith(STASH)
    const before = await readEverything(store)
    const file = await throughZip(await fileOf(store))
    await wipe(store)
    expect((await readEverything(store)).contents.records.garments).toEqual([])
    expect(await readDevice(store)).toBeNull()
    await restore(store, file, makeId)
    const after = await readEverything(store)
    expect(after.contents).toEqual(before.contents)
    expect(after.contents).toEqual(STASH)
    expect(after.drafts).toEqual({ check: { kind: 'dress' } })
    expect(after.settings).toMatchObject({ units: 'in', dotsPerMm: null })
    expect(await after.pictures[0]?.picture.arrayBuffer()).toEqual(await JPEG.arrayBuffer())
  })

  it('replaces what is there, and keeps this screen’s scale', async () => {
    const store = await storeWith(contents({ garments: [kept(testGarment({ id: 'other' }), 3)] }))
    await store.database.put('settings', { dotsPerMm: 7 } as never, 'all')
    await restore(store, await fileOf(await storeWith(STASH)), makeId)
    const after = await readEverything(store)
    expect(after.contents).toEqual(STASH)
    expect(after.settings).toMatchObject({ units: 'in', dotsPerMm: 7 })
  })
})

describe('merging two devices’ files', () => {
  it('of the same state changes nothing', async () => {
    const store = await storeWith(STASH)
    const file = await throughZip(await fileOf(store))
    const preview = await previewMerge(store, file)
    expect([preview.differences, preview.conflicts, preview.settlements]).toEqual([[], [], []])
    await mergeIn(store, file, makeId)
    expect((await readEverything(store)).contents).toEqual(STASH)
  })

  it('takes what is new there with its picture, and lists what both have changed', async () => {
    const phone = await storeWith(STASH)
    const tablet = await open()
    await restore(tablet, await throughZip(await fileOf(phone)), makeId)
    const put = (store: Store<never>, name: string, changedAt: number, id = 'g1') =>
      store.database.put('garments', kept(testGarment({ id, name, photos: ['f1'] }), changedAt))
    await put(phone, 'Phone’s name', 20)
    await put(tablet, 'Tablet’s name', 30)
    await put(tablet, 'Only there', 31, 'g2')
    await tablet.database.put('photos', photo('f2'))
    await tablet.database.put('pictures', { id: 'f2', picture: JPEG })

    const file = await throughZip(await fileOf(tablet, 40))
    const preview = await previewMerge(phone, file)
    expect(preview.conflicts).toEqual([
      { store: 'garments', id: 'g1', taken: 'there', units: [{ unit: 'name', taken: 'there' }] },
    ])
    expect(preview.differences).toEqual([
      { store: 'garments', id: 'g1', what: 'changes' },
      { store: 'garments', id: 'g2', what: 'comes' },
      { store: 'photos', id: 'f2', what: 'comes' },
    ])
    await mergeIn(phone, file, makeId)
    const merged = await readEverything(phone)
    expect(merged.contents.records.garments.map(({ value }) => value.name)).toEqual([
      'Tablet’s name',
      'Only there',
    ])
    expect(merged.pictures.map(({ id }) => id)).toEqual(['f1', 'f2'])

    await mergeIn(tablet, await throughZip(await fileOf(phone, 50)), makeId)
    expect((await readEverything(tablet)).contents).toEqual(merged.contents)
  })

  it('lists no conflict where only one side has changed a record since they were the same', async () => {
    const phone = await storeWith(STASH)
    const tablet = await open()
    await restore(tablet, await throughZip(await fileOf(phone)), makeId)
    await phone.database.put('garments', kept(testGarment({ name: 'New name', photos: ['f1'] }), 20))
    expect((await previewMerge(tablet, await fileOf(phone, 25))).conflicts).toEqual([])
    expect((await previewMerge(phone, await fileOf(tablet, 25))).conflicts).toEqual([])
  })

  it('lets a removal win over what was changed before it, its picture too', async () => {
    const phone = await storeWith(STASH)
    const tablet = await open()
    await restore(tablet, await fileOf(phone), makeId)
    await tablet.database.delete('photos', 'f1')
    await tablet.database.put('removed', { store: 'photos', id: 'f1', removedAt: 50 })
    await mergeIn(phone, await fileOf(tablet, 60), makeId)
    const { contents: after, pictures } = await readEverything(phone)
    expect(after.records.photos).toEqual([])
    expect(pictures).toEqual([])
  })
})

describe('the last backup', () => {
  it('is remembered, and is a state in common with itself', async () => {
    const store = await storeWith(STASH)
    const file = await fileOf(store, 70)
    await rememberBackup(store, file.contents, file.madeAt)
    expect(await readDevice(store)).toMatchObject({ backedUpAt: 70 })
    await store.database.put('garments', kept(testGarment({ name: 'Since', photos: ['f1'] }), 80))
    const preview = await previewMerge(store, file)
    expect([preview.conflicts, preview.differences]).toEqual([[], []])
  })
})

/** Ends the store's transaction at its nth request that writes, as a phone that dies would. */
function dieAtRequest(n: number): { readonly reached: () => boolean } {
  let requests = 0
  for (const name of ['put', 'delete', 'clear'] as const) {
    const original = IDBObjectStore.prototype[name] as (...args: never[]) => IDBRequest
    vi.spyOn(IDBObjectStore.prototype, name).mockImplementation(function (
      this: IDBObjectStore,
      ...args: never[]
    ) {
      const request = original.apply(this, args)
      requests += 1
      if (requests === n) this.transaction.abort()
      return request
    } as never)
  }
  return { reached: () => requests >= n }
}

describe.each(['restore', 'merge', 'wipe'] as const)('%s cut off at any request', (what) => {
  it('leaves the old state whole', async () => {
    const old = contents({
      garments: [kept(testGarment({ id: 'g9', name: 'Mine' }), 4), kept(testGarment({ name: 'Older' }), 2)],
      photos: [photo('f9')],
    })
    const file = await fileOf(await storeWith(STASH))
    const store = await storeWith(old)
    const before = await readEverything(store)
    const work = () =>
      what === 'wipe'
        ? wipe(store)
        : what === 'merge'
          ? mergeIn(store, file, makeId)
          : restore(store, file, makeId)
    let died = 0
    for (let n = 1; ; n++) {
      const { reached } = dieAtRequest(n)
      const outcome = await work().then(
        () => 'done',
        () => 'cut off',
      )
      vi.restoreAllMocks()
      if (!reached()) {
        expect(outcome).toBe('done')
        break
      }
      expect(outcome).toBe('cut off')
      const after = await readEverything(store)
      expect(after.contents).toEqual(before.contents)
      expect([after.settings, after.drafts]).toEqual([before.settings, before.drafts])
      expect(after.pictures.map(({ id }) => id)).toEqual(['f9'])
      died += 1
    }
    expect(died).toBeGreaterThan(8)
    expect((await readEverything(store)).contents).not.toEqual(before.contents)
  })
})
