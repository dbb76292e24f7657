import { describe, expect, it } from 'vitest'
import type { Demo } from '../../../src/core/records/demo.ts'
import { DEMO_STORES, demoId } from '../../../src/core/records/demo.ts'
import type { Cut, Offcut } from '../../../src/core/stash/cut.ts'
import type { Project } from '../../../src/core/stash/project.ts'
import type { Reservation } from '../../../src/core/stash/reservation.ts'
import { restore } from '../../../src/storage/cloth/restore.ts'
import { putDemo } from '../../../src/storage/demo/put-demo.ts'
import { removeDemo } from '../../../src/storage/demo/remove-demo.ts'
import type { Store } from '../../../src/storage/open-store.ts'
import { putRecord } from '../../../src/storage/stores/collection.ts'
import { putGarment, removeGarment } from '../../../src/storage/stores/garments.ts'
import { putProject, removeProject } from '../../../src/storage/stores/projects.ts'
import { testProject } from '../../support/records.ts'
import { testGarment, testPattern, testStore } from '../../support/storage.ts'

const SQUARE = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
] as const

function project(id: string): Project {
  return testProject({ id, name: 'Bag', pattern: testPattern({ id: 'p', sizes: ['one'] }) })
}

function laid(panel: string) {
  return { piece: 'side', copy: 1, panel, turn: 0, mirrored: false, x: 0, y: 0, outline: SQUARE }
}

function reservation(id: string, of: string, garment: string): Reservation {
  return { id, project: of, garment, pieces: [laid('front')], clearance: 0, spare: null }
}

function cut(id: string, of: string, garment: string): Cut {
  return {
    id,
    project: of,
    garment,
    panel: 'back',
    outline: SQUARE,
    flaws: [],
    pieces: [laid('back')],
    reservation: 'r',
    offcuts: [`${id}-offcut`],
    at: 1,
  }
}

function offcut(of: Cut): Offcut {
  return {
    id: of.offcuts[0] as string,
    garment: of.garment,
    cut: of.id,
    outline: SQUARE,
    flaws: [],
    kept: true,
  }
}

const DEMO_CUT = cut('demo-cut', 'demo-bag', 'demo-tee')
const DEMO: Demo = {
  garments: [testGarment({ id: 'demo-tee' }), testGarment({ id: 'demo-shirt' })],
  notions: [
    {
      id: 'demo-zip',
      kind: 'zip',
      name: 'Zip',
      width: null,
      colour: '',
      lengths: [],
      count: 1,
      price: null,
      place: '',
      note: '',
    },
  ],
  projects: [project('demo-bag')],
  reservations: [reservation('demo-r', 'demo-bag', 'demo-tee')],
  cuts: [DEMO_CUT],
  offcuts: [offcut(DEMO_CUT)],
}

/** Everything stored, by store. */
async function stored({ database }: Store<unknown>) {
  const names = [...DEMO_STORES, 'photos', 'pictures'] as const
  const lists = await Promise.all(names.map(async (name) => [name, await database.getAll(name)] as const))
  return Object.fromEntries(lists)
}

async function ids(store: Store<unknown>, name: (typeof DEMO_STORES)[number]): Promise<readonly string[]> {
  return store.database.getAllKeys(name)
}

/** Her own: a garment, a project, a reservation and a cut with its offcut. */
async function putHers(store: Store<unknown>): Promise<void> {
  await putGarment(store, testGarment({ id: 'hers' }))
  await putProject(store, project('her-bag'))
  await putRecord(store, 'notions', { ...(DEMO.notions[0] as Demo['notions'][number]), id: 'her-zip' })
  await putRecord(store, 'reservations', reservation('her-r', 'her-bag', 'hers'))
  const own = cut('her-cut', 'her-bag', 'hers')
  await putRecord(store, 'cuts', own)
  await putRecord(store, 'offcuts', offcut(own))
}

describe('ids of the demo', () => {
  it('begin with demo-', () => {
    expect(demoId('tee')).toBe('demo-tee')
  })
})

describe('putting the demo', () => {
  it('stores all of it, once however often it is put', async () => {
    let now = 100
    const store = await testStore({ now: () => now })
    await putDemo(store, DEMO)
    const once = await stored(store)
    for (const name of DEMO_STORES) expect(await ids(store, name)).toHaveLength(DEMO[name].length)
    now = 200
    await putDemo(store, DEMO)
    expect(await stored(store)).toEqual(once)
  })

  it('stores nothing when any of it is refused', async () => {
    const store = await testStore()
    const uncloneable = { ...DEMO_CUT, at: () => 1 } as unknown as Cut
    await expect(putDemo(store, { ...DEMO, cuts: [uncloneable] })).rejects.toThrow()
    for (const name of DEMO_STORES) expect(await ids(store, name)).toEqual([])
  })

  it('leaves what she has changed and puts what she has removed', async () => {
    const store = await testStore()
    await putDemo(store, DEMO)
    await putGarment(store, testGarment({ id: 'demo-shirt', note: 'torn' }))
    await removeGarment(store, 'demo-tee')
    await putDemo(store, DEMO)
    expect(await ids(store, 'garments')).toEqual(['demo-shirt', 'demo-tee'])
    expect((await store.database.get('garments', 'demo-shirt'))?.value.note).toBe('torn')
    expect(await store.database.getAll('removed')).not.toContainEqual(
      expect.objectContaining({ store: 'garments' }),
    )
  })

  it('does not lay again what she has kept the garment or the project of', async () => {
    for (const remove of [
      (store: Store<unknown>) => removeGarment(store, 'demo-tee'),
      (store: Store<unknown>) => removeProject(store, 'demo-bag'),
    ]) {
      const store = await testStore()
      await putDemo(store, DEMO)
      await remove(store)
      await putDemo(store, DEMO)
      expect(await ids(store, 'projects')).toEqual(['demo-bag'])
      expect(await ids(store, 'garments')).toHaveLength(2)
      expect(await ids(store, 'reservations')).toEqual([])
    }
  })
})

describe('removing the demo', () => {
  it('leaves her own exactly as it was', async () => {
    const store = await testStore()
    await putHers(store)
    const before = await stored(store)
    await putDemo(store, DEMO)
    await removeDemo(store)
    expect(await stored(store)).toEqual(before)
  })

  it('takes what she reserved or cut on its garments, and photos of them, and frees cloth of hers', async () => {
    const store = await testStore()
    await putHers(store)
    await putDemo(store, DEMO)
    const picture = new Blob(['x'])
    await putGarment(store, testGarment({ id: 'demo-shirt', photos: ['photo'] }))
    await store.database.put('photos', {
      id: 'photo',
      value: { id: 'photo', width: 1, height: 1, takenAt: 1 } as never,
      keptAt: 1,
      changedAt: 1,
    })
    await store.database.put('pictures', { id: 'photo', picture })
    await putRecord(store, 'reservations', reservation('on-demo', 'her-bag', 'demo-shirt'))
    const fromDemo = cut('from-demo', 'her-bag', 'demo-shirt')
    await putRecord(store, 'cuts', fromDemo)
    await putRecord(store, 'offcuts', offcut(fromDemo))
    await putRecord(store, 'reservations', reservation('for-demo', 'demo-bag', 'hers'))
    await putRecord(store, 'cuts', cut('cut-for-demo', 'demo-bag', 'hers'))
    await removeDemo(store)
    expect(await ids(store, 'reservations')).toEqual(['her-r'])
    // What was cut from cloth of hers stays cut.
    expect(await ids(store, 'cuts')).toEqual(['cut-for-demo', 'her-cut'])
    expect(await ids(store, 'offcuts')).toEqual(['her-cut-offcut'])
    expect(await ids(store, 'projects')).toEqual(['her-bag'])
    expect(await store.database.getAllKeys('photos')).toEqual([])
    expect(await store.database.getAllKeys('pictures')).toEqual([])
  })

  it('can be taken back, and done when there is none', async () => {
    let now = 100
    const store = await testStore({ now: () => now })
    await removeDemo(store)
    await putDemo(store, { ...DEMO, reservations: [] })
    const values = async () =>
      Object.values(await stored(store)).flatMap((list) =>
        list.map((one) => ('value' in one ? one.value : one)),
      )
    const before = await values()
    now = 200
    expect(await restore(store, await removeDemo(store))).toEqual([])
    expect(await values()).toEqual(before)
    expect(await store.database.getAll('removed')).toEqual([])
  })
})
