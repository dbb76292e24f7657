import { describe, expect, it } from 'vitest'
import { ok } from '../../../src/core/base/result.ts'
import { readCut, readOffcut } from '../../../src/readers/model/cut.ts'
import { readGarment } from '../../../src/readers/model/garment.ts'
import { knownDevice } from '../../../src/storage/backup/device.ts'
import type { FromFile } from '../../../src/storage/backup/everything.ts'
import { mergeIn, previewMerge } from '../../../src/storage/backup/merge.ts'
import { readEverything } from '../../../src/storage/backup/read-everything.ts'
import { restore as restoreFile } from '../../../src/storage/backup/restore.ts'
import { restore } from '../../../src/storage/cloth/restore.ts'
import type { Store } from '../../../src/storage/open-store.ts'
import { putGarment, removeGarment } from '../../../src/storage/stores/garments.ts'
import { putNotion } from '../../../src/storage/stores/notions.ts'
import { addPhoto, removePhoto } from '../../../src/storage/stores/photos.ts'
import { putProject } from '../../../src/storage/stores/projects.ts'
import { takeNotions } from '../../../src/storage/stores/taken-notions.ts'
import { testGarment } from '../../support/records.ts'
import { TEST_GATES, testStore } from '../../support/storage.ts'
import {
  kept,
  laid,
  rectangle,
  testCut,
  testOffcut,
  testProject,
  testReservation,
} from '../../support/two-devices.ts'

const JPEG = new Blob([new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])], { type: 'image/jpeg' })
const gates = {
  ...TEST_GATES,
  garments: readGarment,
  cuts: readCut,
  offcuts: readOffcut,
  draft: () => ok(null as never),
}

let devices = 0
const makeId = () => `device-${++devices}`

interface Phone {
  readonly store: Store<never>
  /** Sets its clock, ms. */
  readonly at: (now: number) => void
}

async function phone(start: number): Promise<Phone> {
  let now = start
  const store = (await testStore({ gates: gates as never, now: () => now })) as Store<never>
  return { store, at: (time) => (now = time) }
}

async function fileOf({ store }: Phone, madeAt: number): Promise<FromFile> {
  const { id, common } = await knownDevice(store, makeId)
  return { ...(await readEverything(store)), device: id, madeAt, common }
}

/** Two phones with the same of everything, as of 1000. */
async function twoPhones(fill: (store: Store<never>) => Promise<void>): Promise<readonly [Phone, Phone]> {
  const [mine, theirs] = [await phone(1000), await phone(1000)]
  await fill(mine.store)
  await restoreFile(theirs.store, await fileOf(mine, 1001), makeId)
  return [mine, theirs]
}

const namesOf = async ({ store }: Phone) =>
  (await readEverything(store)).contents.records.garments.map(({ value }) => value.name)

describe('on a phone whose clock runs behind', () => {
  it('a change is not undone by what it changed', async () => {
    const [mine, theirs] = await twoPhones((store) => putGarment(store, testGarment()))
    mine.at(500)
    await putGarment(mine.store, testGarment({ name: 'New name' }))
    await mergeIn(mine.store, await fileOf(theirs, 2000), makeId)
    expect(await namesOf(mine)).toEqual(['New name'])
    await mergeIn(theirs.store, await fileOf(mine, 2001), makeId)
    expect(await namesOf(theirs)).toEqual(['New name'])
  })

  it('a removal is not undone, nor is putting back what was removed', async () => {
    const [mine, theirs] = await twoPhones((store) => putGarment(store, testGarment()))
    mine.at(500)
    const removal = await removeGarment(mine.store, 'g1')
    await mergeIn(mine.store, await fileOf(theirs, 2000), makeId)
    expect(await namesOf(mine)).toEqual([])
    await mergeIn(theirs.store, await fileOf(mine, 2001), makeId)
    expect(await namesOf(theirs)).toEqual([])

    mine.at(400)
    await restore(mine.store, removal)
    await mergeIn(mine.store, await fileOf(theirs, 2002), makeId)
    expect(await namesOf(mine)).toEqual(['Striped T-shirt'])
  })

  it('a length cut from a notion is not given back', async () => {
    const elastic = {
      id: 'n1',
      kind: 'elastic' as const,
      name: '',
      width: 25,
      colour: '',
      lengths: [2000],
      count: 0,
      price: null,
      place: '',
      note: '',
    }
    const [mine, theirs] = await twoPhones(async (store) => {
      await putNotion(store, elastic)
      await putProject(store, testProject())
    })
    mine.at(500)
    await takeNotions(mine.store, 'bag', [
      { notion: 'n1', from: 2000, takes: [{ need: 'waist', amount: 500 }], left: 1500 },
    ])
    const before = await readEverything(mine.store)
    await mergeIn(mine.store, await fileOf(theirs, 2000), makeId)
    expect((await readEverything(mine.store)).contents).toEqual(before.contents)
  })
})

describe('a garment removed here and reserved there', () => {
  it('stays with its photo, its picture, and its cloth cut as it was', async () => {
    const [mine, theirs] = await twoPhones(async (store) => {
      await putGarment(store, testGarment())
      await putProject(store, testProject())
      await addPhoto(store, 'g1', { id: 'f1', width: 40, height: 30, takenAt: 5 }, JPEG)
      const cut = testCut({ offcuts: ['o1'], pieces: [laid('base', 'front', rectangle(0, 0, 90, 90))] })
      await store.database.put('cuts', kept(cut, 1000))
      await store.database.put('offcuts', kept(testOffcut(), 1000))
    })
    mine.at(2000)
    await removeGarment(mine.store, 'g1')
    const pieces = [laid('body', 'o1', rectangle(0, 250, 100, 100))]
    await theirs.store.database.put('reservations', kept(testReservation({ pieces }), 1500))

    const file = await fileOf(theirs, 2500)
    const preview = await previewMerge(mine.store, file)
    expect(preview.settlements.map(({ store, what }) => `${store} ${what}`).sort()).toEqual([
      'cuts kept-for',
      'garments kept-for',
      'offcuts kept-for',
      'photos kept-for',
    ])
    await mergeIn(mine.store, file, makeId)
    await mergeIn(theirs.store, await fileOf(mine, 2600), makeId)
    for (const { store } of [mine, theirs]) {
      const { contents, pictures } = await readEverything(store)
      expect(contents.records.garments.map(({ value }) => value.photos)).toEqual([['f1']])
      expect(contents.records.photos.map(({ id }) => id)).toEqual(['f1'])
      expect(pictures.map(({ id }) => id)).toEqual(['f1'])
      expect(contents.records.cuts.map(({ id }) => id)).toEqual(['c1'])
      expect(contents.records.reservations.map(({ value }) => value.pieces[0]?.panel)).toEqual(['o1'])
    }
  })

  it('or merely renamed there later is whole again too', async () => {
    const [mine, theirs] = await twoPhones(async (store) => {
      await putGarment(store, testGarment())
      await addPhoto(store, 'g1', { id: 'f1', width: 40, height: 30, takenAt: 5 }, JPEG)
    })
    mine.at(2000)
    await removeGarment(mine.store, 'g1')
    theirs.at(3000)
    await putGarment(theirs.store, testGarment({ name: 'Renamed', photos: ['f1'] }))
    await mergeIn(theirs.store, await fileOf(mine, 3500), makeId)
    await mergeIn(mine.store, await fileOf(theirs, 3600), makeId)
    for (const { store } of [mine, theirs]) {
      const { contents, pictures } = await readEverything(store)
      expect(contents.records.garments.map(({ value }) => [value.name, value.photos])).toEqual([
        ['Renamed', ['f1']],
      ])
      expect(contents.records.photos.map(({ id }) => id)).toEqual(['f1'])
      expect(pictures.map(({ id }) => id)).toEqual(['f1'])
    }
  })

  it('comes without the photo that had been taken off before', async () => {
    const [mine, theirs] = await twoPhones(async (store) => {
      await putGarment(store, testGarment())
      await addPhoto(store, 'g1', { id: 'f1', width: 40, height: 30, takenAt: 5 }, JPEG)
    })
    mine.at(2000)
    await removePhoto(mine.store, 'g1', 'f1')
    mine.at(2100)
    await removeGarment(mine.store, 'g1')
    theirs.at(3000)
    await putGarment(theirs.store, testGarment({ name: 'Renamed', photos: ['f1'] }))
    await mergeIn(theirs.store, await fileOf(mine, 3500), makeId)
    expect((await readEverything(theirs.store)).contents.records.photos).toEqual([])
  })
})

it('the times of single fields go into the file and come out of it', async () => {
  const [mine] = await twoPhones((store) => putGarment(store, testGarment()))
  mine.at(2000)
  await putGarment(mine.store, testGarment({ name: 'New name' }))
  const [garment] = (await readEverything(mine.store)).contents.records.garments
  expect(garment).toMatchObject({ changedAt: 2000, unitsChangedAt: { place: 1000, 'cloth.colour': 1000 } })
  expect(garment?.unitsChangedAt).not.toHaveProperty('name')
})
