import { afterEach, describe, expect, it, vi } from 'vitest'
import { SLIVER_WIDTH } from '../../src/core/stash/sliver.ts'
import { cutPanel } from '../../src/storage/cloth/cut-panel.ts'
import { reserve } from '../../src/storage/cloth/reserve.ts'
import { restore } from '../../src/storage/cloth/restore.ts'
import { undoCut } from '../../src/storage/cloth/undo-cut.ts'
import { StorageFull, StorageLost } from '../../src/storage/errors.ts'
import { closeStore, type Store } from '../../src/storage/open-store.ts'
import { keepOffcut } from '../../src/storage/stores/cuts.ts'
import { keepGarment, putGarment, removeGarment } from '../../src/storage/stores/garments.ts'
import { putNotion } from '../../src/storage/stores/notions.ts'
import { putPattern, removePattern } from '../../src/storage/stores/patterns.ts'
import { addPhoto, removePhoto } from '../../src/storage/stores/photos.ts'
import { putProject, removeProject } from '../../src/storage/stores/projects.ts'
import { releaseReservation } from '../../src/storage/stores/reservations.ts'
import { dieAtRequest, type Moment } from '../support/dying.ts'
import { rectangle } from '../support/lay-problems.ts'
import { aCloth, aReservation, laidAt } from '../support/stash.ts'
import { BAG, everythingIn, freshId, HAT, storeWithCloth, troubleIn } from '../support/stash-store.ts'
import { freshName, testPattern, testStore } from '../support/storage.ts'
import { testProject } from '../support/two-devices.ts'

afterEach(() => vi.restoreAllMocks())

const PHOTO = { id: 'f1', width: 4, height: 3, takenAt: 5 }
const NOTION = {
  id: 'n1',
  kind: 'ring',
  name: 'Ring',
  width: null,
  colour: '',
  lengths: [],
  count: 4,
  price: null,
  place: '',
  note: '',
} as const

interface Home {
  readonly store: Store<unknown>
  /** Ids of a cut of the cloth and of its offcut; on that, the hat is reserved and half the bag. */
  readonly cut: string
  readonly offcut: string
}

/** A cloth with a photo, cut once for the bag, with half the bag and the hat reserved on what is left, and a second cloth. */
async function aHome(name: string): Promise<Home> {
  const store = await storeWithCloth([BAG, HAT], { name })
  await addPhoto(store, 'cloth', PHOTO, new Blob(['jpeg']))
  await putGarment(store, aCloth({ id: 'second' }))
  await putPattern(store, testPattern())
  const order = { reservation: 'r-bag', panel: 'outline', pieces: [{ piece: 'body', copy: 1 }] }
  const { cut, offcuts } = await cutPanel(store, { ...order, sliver: SLIVER_WIDTH, newId: freshId })
  return { store, cut: cut.id, offcut: offcuts[0]!.id }
}

const onSecond = {
  ...aReservation(
    'r-second',
    [laidAt('body', rectangle(200, 300), { copy: 2 }), laidAt('tie', rectangle(100, 50, 300, 0))],
    'bag',
  ),
  garment: 'second',
}

/** Every kind of write there is. */
const WRITES: Readonly<Record<string, (home: Home) => Promise<unknown>>> = {
  'reserving a lay, which takes a copy from another reservation': ({ store }) =>
    reserve(store, { reservation: onSecond }),
  'reserving with a garment and a project changed': ({ store }) =>
    reserve(store, {
      reservation: onSecond,
      garment: aCloth({ id: 'second', name: 'Mended' }),
      project: testProject({ id: 'bag', name: 'Changed' }),
    }),
  'releasing a reservation': ({ store }) => releaseReservation(store, 'r-hat'),
  'cutting an offcut on which another is reserved': ({ store, offcut }) =>
    cutPanel(store, { reservation: 'r-hat', panel: offcut, sliver: SLIVER_WIDTH, newId: freshId }),
  'taking a cut back': ({ store, cut }) => undoCut(store, cut),
  'throwing an offcut away': ({ store, offcut }) => keepOffcut(store, offcut, false),
  'removing a project with its reservations': ({ store }) => removeProject(store, 'bag'),
  'removing a garment with all that hangs on it': ({ store }) => removeGarment(store, 'cloth'),
  'keeping a project': ({ store }) => putProject(store, testProject({ id: 'coat' })),
  'keeping a garment': ({ store }) => keepGarment(store, aCloth({ id: 'third' })),
  'keeping a notion': ({ store }) => putNotion(store, NOTION),
  'removing a pattern': ({ store }) => removePattern(store, 'p1'),
  'taking a photo up': ({ store }) => addPhoto(store, 'cloth', { ...PHOTO, id: 'f2' }, new Blob(['two'])),
  'removing a photo': ({ store }) => removePhoto(store, 'cloth', 'f1'),
}

let kills = 0

/** Kills the write at every request in turn; after each, the store is opened anew and must be as it was before. */
async function killAtEveryRequest(
  write: (home: Home) => Promise<unknown>,
  prepare: (home: Home) => Promise<void>,
  moment: Moment,
): Promise<number> {
  const name = freshName()
  const home = await aHome(name)
  await prepare(home)
  const before = await everythingIn(home.store)
  closeStore(home.store)
  for (let n = 1; ; n++) {
    const store = await testStore({ name })
    const { reached } = dieAtRequest(n, moment)
    const outcome = await write({ ...home, store }).then(
      () => 'done',
      () => 'killed',
    )
    vi.restoreAllMocks()
    closeStore(store)
    const again = await testStore({ name })
    if (!reached()) {
      expect(outcome).toBe('done')
      // What is reserved on an offcut that she throws away is told so, and stays.
      expect((await troubleIn(again)).filter((one) => !one.endsWith('panel-gone'))).toEqual([])
      expect(await everythingIn(again)).not.toEqual(before)
      return n - 1
    }
    expect(outcome).toBe('killed')
    expect(await troubleIn(again)).toEqual([])
    expect(await everythingIn(again)).toEqual(before)
    closeStore(again)
    kills += 1
  }
}

describe.each(Object.entries(WRITES))('%s', (_what, write) => {
  it.each(['asked', 'answered'] as const)(
    'killed when any of its requests is %s leaves what was stored before, whole',
    async (moment) => {
      expect(await killAtEveryRequest(write, async () => {}, moment)).toBeGreaterThanOrEqual(2)
    },
  )
})

describe('bringing back what was removed', () => {
  it.each([
    ['a garment', (store: Store<unknown>) => removeGarment(store, 'cloth')],
    ['a project', (store: Store<unknown>) => removeProject(store, 'bag')],
  ] as const)('%s, killed at any request, leaves it removed', async (_what, remove) => {
    let removal: Awaited<ReturnType<typeof removeGarment>> | undefined
    const prepare = async ({ store }: Home) => {
      removal = await remove(store)
    }
    for (const moment of ['asked', 'answered'] as const)
      expect(
        await killAtEveryRequest(({ store }) => restore(store, removal!), prepare, moment),
      ).toBeGreaterThan(4)
  })
})

describe('all these kills', () => {
  it('were more than 300', () => {
    expect(kills).toBeGreaterThan(300)
  })
})

describe('a full disk', () => {
  it('met at any of its writes refuses the cut whole, as a StorageFull', async () => {
    const home = await aHome(freshName())
    const before = await everythingIn(home.store)
    const put = IDBObjectStore.prototype.put
    for (let n = 1; ; n++) {
      let puts = 0
      vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
        puts += 1
        if (puts === n) throw new DOMException('no room', 'QuotaExceededError')
        return put.apply(this, args)
      })
      const outcome = await WRITES['cutting an offcut on which another is reserved']!(home).catch(
        (error: unknown) => error,
      )
      vi.restoreAllMocks()
      if (puts < n) break
      expect(outcome).toBeInstanceOf(StorageFull)
      expect(await everythingIn(home.store)).toEqual(before)
    }
    expect(await troubleIn(home.store)).toEqual([])
  })
})

describe('a connection that is gone', () => {
  it('is a StorageLost for what spans several records too', async () => {
    const home = await aHome(freshName())
    home.store.database.close()
    for (const write of Object.values(WRITES)) await expect(write(home)).rejects.toBeInstanceOf(StorageLost)
  })
})
