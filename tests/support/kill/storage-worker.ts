import { type IDBPDatabase, openDB } from 'idb'
import { SLIVER_WIDTH } from '../../../src/core/stash/sliver.ts'
import { mergeIn } from '../../../src/storage/backup/merge.ts'
import { restore as restoreBackup, wipe } from '../../../src/storage/backup/restore.ts'
import { cutPanel } from '../../../src/storage/cloth/cut-panel.ts'
import { reserve } from '../../../src/storage/cloth/reserve.ts'
import { restore } from '../../../src/storage/cloth/restore.ts'
import { undoCut } from '../../../src/storage/cloth/undo-cut.ts'
import { openStore, type Store } from '../../../src/storage/open-store.ts'
import { keepGarment, putGarment, removeGarment } from '../../../src/storage/stores/garments.ts'
import { addPhoto } from '../../../src/storage/stores/photos.ts'
import { putProject, removeProject } from '../../../src/storage/stores/projects.ts'
import { draftGate } from '../../../src/ui/state/draft-gate.ts'
import { RECORD_GATES } from '../../../src/ui/state/record-gates.ts'
import { rectangle } from '../lay-problems.ts'
import { contents, kept, testProject } from '../records.ts'
import { aCloth, aReservation, laidAt } from '../stash.ts'
import { haltAtRequest, type Moment } from './halt-at-request.ts'

/**
 * The app's own storage code in a worker, without screens, so that a test can begin many writes at once and kill them all
 * in the middle. Everything lies on cloths of 600 × 400 whose only panel is `outline`.
 */

let store: Store<unknown>

let ids = 0
const newId = () => `${crypto.randomUUID()}-${ids++}`
const picture = (text: string) => new Blob([text], { type: 'image/jpeg' })
const PHOTO = { id: 'f1', width: 4, height: 3, takenAt: 5 }

const BAG = aReservation(
  'r-bag',
  [laidAt('body', rectangle(200, 300)), laidAt('body', rectangle(200, 300, 200, 0), { copy: 2 })],
  'bag',
)
const HAT = aReservation('r-hat', [laidAt('brim', rectangle(150, 150, 420, 0))], 'hat')
const ON_SECOND = {
  ...aReservation(
    'r-second',
    [laidAt('body', rectangle(200, 300), { copy: 2 }), laidAt('tie', rectangle(100, 50, 300, 0))],
    'bag',
  ),
  garment: 'second',
}

async function cutBag(): Promise<string> {
  const order = { reservation: 'r-bag', panel: 'outline', pieces: [{ piece: 'body', copy: 1 }] }
  const { cut } = await cutPanel(store, { ...order, sliver: SLIVER_WIDTH, newId })
  return cut.id
}

/** A cloth with a photo, the bag and the hat reserved on it and one piece of the bag cut; a second cloth. */
async function furnish(): Promise<void> {
  await wipe(store)
  for (const id of ['cloth', 'second']) await putGarment(store, aCloth({ id }))
  for (const id of ['bag', 'hat']) await putProject(store, testProject({ id, name: id }))
  await addPhoto(store, 'cloth', PHOTO, picture('first'))
  for (const reservation of [BAG, HAT]) await reserve(store, { reservation })
  await cutBag()
}

const only = async (name: 'cuts' | 'offcuts') => (await store.database.getAllKeys(name))[0] as string

/** What another device may have kept: a cloth with a photo and a reservation, another name for the first cloth. */
function fromFile() {
  const at = Date.now() + 1000
  const photo = { ...PHOTO, id: 'f9' }
  const garments = [aCloth({ name: 'Renamed' }), aCloth({ id: 'ninth', photos: ['f9'] })]
  const coat = testProject({ id: 'coat', name: 'coat' })
  const reservation = {
    ...aReservation('r-coat', [laidAt('front', rectangle(300, 300))], 'coat'),
    garment: 'ninth',
  }
  return {
    device: 'other',
    madeAt: at,
    common: [],
    drafts: {},
    pictures: [{ id: 'f9', picture: picture('ninth') }],
    contents: contents({
      garments: garments.map((one) => kept(one, at)),
      projects: [kept(coat, at)],
      reservations: [kept(reservation, at)],
      photos: [kept(photo, at)],
    }),
  }
}

/** Writes to be killed, of the furnished store. */
const WRITES = {
  'reserving a lay that takes a copy from another': () => reserve(store, { reservation: ON_SECOND }),
  'reserving with a garment and a project changed': () =>
    reserve(store, {
      reservation: ON_SECOND,
      garment: aCloth({ id: 'second', name: 'Mended' }),
      project: testProject({ id: 'bag', name: 'Changed' }),
    }),
  'cutting an offcut that holds another reservation': async () =>
    cutPanel(store, {
      reservation: 'r-hat',
      panel: await only('offcuts'),
      sliver: SLIVER_WIDTH,
      newId,
    }),
  'taking a cut back': async () => undoCut(store, await only('cuts')),
  'keeping a garment': () => keepGarment(store, aCloth({ id: 'third' })),
  'taking a photo up': () => addPhoto(store, 'cloth', { ...PHOTO, id: 'f2' }, picture('second')),
  'removing a garment with all that hangs on it': () => removeGarment(store, 'cloth'),
  'restoring a backup': () => restoreBackup(store, fromFile(), newId),
  'merging a backup': () => mergeIn(store, fromFile(), newId),
} as const

/** Writes of every kind one after another without end. `acknowledge` hears of each garment once it is kept. */
async function writeOn(acknowledge: (id: string) => void): Promise<never> {
  for (let round = 0; ; round++) {
    await reserve(store, { reservation: ON_SECOND })
    const id = `kept-${round}-${newId()}`
    await keepGarment(store, aCloth({ id }))
    acknowledge(id)
    await undoCut(store, await only('cuts'))
    await cutBag()
    const removal = await removeGarment(store, round % 2 === 0 ? 'cloth' : 'second')
    await restore(store, removal)
    await restore(store, await removeProject(store, 'hat'))
    await addPhoto(store, 'second', { ...PHOTO, id: newId() }, picture(`round ${round}`))
    await reserve(store, { reservation: BAG })
    await undoCut(store, await only('cuts'))
    await reserve(store, { reservation: BAG })
    await cutBag()
  }
}

export type Kind = keyof typeof WRITES

/** What a worker is to do, in the store of this name. All but `furnish` fill that with what `furnished` holds first. */
export type WorkerOrder = { readonly name: string } & (
  | { readonly what: 'furnish' }
  | { readonly what: 'write on'; readonly furnished: string }
  | {
      readonly what: 'write'
      readonly furnished: string
      readonly kind: Kind
      /** Request at which to halt; 0: at none. */
      readonly n: number
      readonly moment: Moment
    }
)

export type WorkerNews =
  | { readonly said: 'done'; readonly requests: number }
  | { readonly said: 'halted' }
  | { readonly said: 'kept'; readonly id: string }
  | { readonly said: 'failed'; readonly why: string }

const tell = (news: WorkerNews) => postMessage(news)

async function obey(order: WorkerOrder): Promise<number> {
  const gates = { ...RECORD_GATES, draft: draftGate }
  store = await openStore({ gates, name: order.name })
  if (order.what === 'furnish') {
    await furnish()
    return 0
  }
  await fillFrom(order.furnished)
  if (order.what === 'write on') return writeOn((id) => tell({ said: 'kept', id }))
  const count = haltAtRequest(order.n, order.moment, () => tell({ said: 'halted' }))
  await WRITES[order.kind]()
  return count()
}

/** Copies all records of the store of this name. */
async function fillFrom(name: string): Promise<void> {
  const from = await openDB(name)
  const names = [...from.objectStoreNames]
  const all = await Promise.all(
    names.map(async (each) => [await from.getAllKeys(each), await from.getAll(each)] as const),
  )
  from.close()
  const to = (store.database as unknown as IDBPDatabase).transaction(names, 'readwrite')
  all.forEach(([keys, records], k) => {
    const shelf = to.objectStore(names[k]!)
    records.forEach((record, r) => void shelf.put(record, shelf.keyPath === null ? keys[r] : undefined))
  })
  await to.done
}

addEventListener('message', ({ data }: MessageEvent<WorkerOrder>) => {
  obey(data).then(
    (requests) => tell({ said: 'done', requests }),
    (error) => tell({ said: 'failed', why: String(error) }),
  )
})
