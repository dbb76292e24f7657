import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { polygonArea } from '../../src/core/geometry/index.ts'
import { SLIVER_WIDTH } from '../../src/core/stash/sliver.ts'
import { cutPanel } from '../../src/storage/cloth/cut-panel.ts'
import { ClothTaken, CutAgain, LayNoLongerHolds, NoLongerThere } from '../../src/storage/cloth/refusals.ts'
import { reserve } from '../../src/storage/cloth/reserve.ts'
import { restore } from '../../src/storage/cloth/restore.ts'
import { undoCut } from '../../src/storage/cloth/undo-cut.ts'
import type { Store } from '../../src/storage/open-store.ts'
import { readClothRecords } from '../../src/storage/stores/cloth-records.ts'
import { keepOffcut } from '../../src/storage/stores/cuts.ts'
import { putGarment, removeGarment } from '../../src/storage/stores/garments.ts'
import { addPhoto, readPhotos, readPicture, removePhoto } from '../../src/storage/stores/photos.ts'
import { putProject, removeProject } from '../../src/storage/stores/projects.ts'
import { releaseReservation } from '../../src/storage/stores/reservations.ts'
import { rectangle } from '../support/lay-problems.ts'
import { aCloth, aReservation, laidAt } from '../support/stash.ts'
import { BAG, everythingIn, freshId, HAT, storeWithCloth, troubleIn } from '../support/stash-store.ts'
import { freshName, testStore } from '../support/storage.ts'
import { testProject } from '../support/two-devices.ts'

const reserved = async (store: Store<unknown>) => (await readClothRecords(store)).records.reservations
const cutting = (reservation: string, panel = 'outline') => ({
  reservation,
  panel,
  sliver: SLIVER_WIDTH,
  newId: freshId,
})

describe('reserving', () => {
  it('stores the reservation, over the one of the same id', async () => {
    const store = await storeWithCloth([BAG])
    const again = { ...BAG, pieces: [laidAt('body', rectangle(200, 300, 50, 50))] }
    await reserve(store, { reservation: again })
    expect(await reserved(store)).toEqual([again])
  })

  it('refuses a place that another project has, naming the piece and the project', async () => {
    const store = await storeWithCloth([BAG])
    const over = aReservation('r-hat', [laidAt('brim', rectangle(100, 100, 350, 250))], 'hat')
    const refusal = await reserve(store, { reservation: over }).catch((error: unknown) => error)
    expect(refusal).toBeInstanceOf(ClothTaken)
    expect(refusal).toMatchObject({
      message: 'brim#1 on outline: taken by body#2 of project bag',
      faults: [{ kind: 'taken', piece: 'brim', by: { project: 'bag', piece: 'body', copy: 2 } }],
    })
    expect(await reserved(store)).toEqual([BAG])
  })

  it('refuses a lay that sticks out of the cloth as it is stored now', async () => {
    const store = await storeWithCloth()
    await putGarment(store, aCloth({ outline: rectangle(300, 300) }))
    const refusal = await reserve(store, { reservation: BAG }).catch((error: unknown) => error)
    expect(refusal).toBeInstanceOf(LayNoLongerHolds)
    expect(refusal).not.toBeInstanceOf(ClothTaken)
    expect(refusal).toMatchObject({ faults: [{ kind: 'outside', piece: 'body', copy: 2 }] })
  })

  it('refuses cloth or a project that is there no more', async () => {
    const store = await storeWithCloth()
    await expect(reserve(store, { reservation: { ...BAG, project: 'gone' } })).rejects.toBeInstanceOf(
      NoLongerThere,
    )
    await expect(reserve(store, { reservation: { ...BAG, garment: 'gone' } })).rejects.toBeInstanceOf(
      NoLongerThere,
    )
  })

  it('changes garment and project with the same stroke, or neither', async () => {
    const store = await storeWithCloth([HAT])
    const before = await everythingIn(store)
    const garment = aCloth({ outline: rectangle(800, 400), name: 'Unpicked' })
    const project = testProject({ id: 'bag', name: 'Smaller bag' })
    const taken = { ...BAG, pieces: [laidAt('body', rectangle(200, 300, 400, 0))] }
    await expect(reserve(store, { reservation: taken, garment, project })).rejects.toBeInstanceOf(ClothTaken)
    expect(await everythingIn(store)).toEqual(before)
    const beyond = { ...BAG, pieces: [laidAt('body', rectangle(200, 300, 600, 0))] }
    await reserve(store, { reservation: beyond, garment, project })
    expect((await store.database.get('garments', 'cloth'))?.value.name).toBe('Unpicked')
    expect((await store.database.get('projects', 'bag'))?.value.name).toBe('Smaller bag')
  })

  it('takes the copies laid now from the project’s other reservations', async () => {
    const store = await storeWithCloth([BAG])
    const second = aReservation('r2', [laidAt('body', rectangle(200, 300, 0, 50), { copy: 1 })], 'bag')
    await reserve(store, { reservation: second })
    expect((await reserved(store)).map(({ id, pieces }) => [id, pieces.map(({ copy }) => copy)])).toEqual([
      ['r-bag', [2]],
      ['r2', [1]],
    ])
    const both = aReservation('r3', BAG.pieces, 'bag')
    await reserve(store, { reservation: both })
    expect((await reserved(store)).map(({ id }) => id)).toEqual(['r3'])
    expect(await store.database.get('removed', ['reservations', 'r2'])).toBeDefined()
  })
})

describe('two tabs', () => {
  async function twoTabs(): Promise<readonly [Store<unknown>, Store<unknown>]> {
    const name = freshName()
    return [await storeWithCloth([], { name }), await testStore({ name })]
  }

  it('that reserve the same cloth at once: one has it, the other is told who', async () => {
    for (let i = 0; i < 10; i++) {
      const [here, there] = await twoTabs()
      const mine = { ...BAG, id: 'mine' }
      const theirs = aReservation('theirs', [laidAt('brim', rectangle(100, 100, 150, 150))], 'hat')
      const outcomes = await Promise.allSettled([
        reserve(i % 2 ? here : there, { reservation: mine }),
        reserve(i % 2 ? there : here, { reservation: theirs }),
      ])
      expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
      const refused = outcomes.find(({ status }) => status === 'rejected') as PromiseRejectedResult
      expect(refused.reason).toBeInstanceOf(ClothTaken)
      const winner = outcomes[0]!.status === 'fulfilled' ? mine : theirs
      expect(refused.reason.faults[0].by.project).toBe(winner.project)
      expect(await reserved(here)).toEqual([winner])
    }
  })

  it('that cut the same panel at once cut it once', async () => {
    const name = freshName()
    const here = await storeWithCloth([BAG, HAT], { name })
    const there = await testStore({ name })
    const outcomes = await Promise.allSettled([
      cutPanel(here, cutting('r-bag')),
      cutPanel(there, cutting('r-hat')),
    ])
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    expect((await readClothRecords(here)).records.cuts).toHaveLength(1)
    expect(await troubleIn(here)).toEqual([])
  })

  it('never come to overlapping places, whatever they reserve, cut, release and take back at once', async () => {
    const step = fc.record({
      what: fc.constantFrom('reserve', 'reserve', 'cut', 'undo', 'release', 'throw'),
      tab: fc.boolean(),
      project: fc.constantFrom('bag', 'hat'),
      at: fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 30 })),
      size: fc.tuple(fc.integer({ min: 5, max: 25 }), fc.integer({ min: 5, max: 20 })),
      copy: fc.integer({ min: 1, max: 4 }),
    })
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 6, maxLength: 14 }), async (steps) => {
        const tabs = await twoTabs()
        // A few steps are under way at any time.
        for (let i = 0; i < steps.length; i += 3)
          await Promise.allSettled(
            steps.slice(i, i + 3).map(async ({ what, tab, project, at: [x, y], size: [w, h], copy }) => {
              const store = tabs[tab ? 0 : 1]
              const { reservations, cuts, offcuts } = (await readClothRecords(store)).records
              const own = reservations.find((one) => one.project === project)
              const panels = ['outline', ...offcuts.map(({ id }) => id)]
              const panel = panels[(x + y) % panels.length]!
              const laid = laidAt('p', rectangle(w * 10, h * 10, x * 10, y * 10), { copy, panel })
              if (what === 'reserve')
                await reserve(store, { reservation: aReservation(freshId(), [laid], project) })
              if (what === 'cut' && own) await cutPanel(store, cutting(own.id, own.pieces[0]!.panel))
              if (what === 'undo' && cuts[0]) await undoCut(store, cuts[0].id)
              if (what === 'release' && own) {
                const removal = await releaseReservation(store, own.id)
                if (copy > 2) await restore(store, removal)
              }
            }),
          )
        expect(await troubleIn(tabs[0])).toEqual([])
      }),
      { numRuns: 60 },
    )
  })
})

describe('cutting', () => {
  it('turns the panel into offcuts and moves what others have reserved to the one that holds it', async () => {
    const store = await storeWithCloth([BAG, HAT])
    const { cut, offcuts } = await cutPanel(store, cutting('r-bag'))
    expect(cut).toMatchObject({
      project: 'bag',
      garment: 'cloth',
      panel: 'outline',
      pieces: BAG.pieces,
      reservation: 'r-bag',
    })
    expect(offcuts).toHaveLength(1)
    expect(Math.abs(polygonArea(offcuts[0]!.outline))).toBeCloseTo(600 * 400 - 400 * 300, 0)
    expect(await reserved(store)).toEqual([
      { ...HAT, pieces: [{ ...HAT.pieces[0]!, panel: offcuts[0]!.id }] },
    ])
    expect(await troubleIn(store)).toEqual([])
  })

  it('of some copies leaves the others reserved, beside the hole', async () => {
    const store = await storeWithCloth([BAG])
    const { offcuts } = await cutPanel(store, { ...cutting('r-bag'), pieces: [{ piece: 'body', copy: 1 }] })
    expect(await reserved(store)).toMatchObject([{ pieces: [{ copy: 2, panel: offcuts[0]!.id }] }])
    expect(await troubleIn(store)).toEqual([])
  })

  it('goes on in the offcuts, whose reservations may be cut in turn', async () => {
    const store = await storeWithCloth([BAG, HAT])
    const { offcuts } = await cutPanel(store, cutting('r-bag'))
    const { cut } = await cutPanel(store, cutting('r-hat', offcuts[0]!.id))
    expect(cut.panel).toBe(offcuts[0]!.id)
    expect(await reserved(store)).toEqual([])
    expect(await troubleIn(store)).toEqual([])
  })

  it('refuses what is there no more, and then changes nothing', async () => {
    const store = await storeWithCloth([BAG])
    const before = await everythingIn(store)
    for (const order of [
      cutting('gone'),
      cutting('r-bag', 'sleeve'),
      { ...cutting('r-bag'), pieces: [{ piece: 'body', copy: 9 }] },
      {
        ...cutting('r-bag'),
        pieces: [
          { piece: 'body', copy: 1 },
          { piece: 'lid', copy: 1 },
        ],
      },
    ])
      await expect(cutPanel(store, order)).rejects.toBeInstanceOf(NoLongerThere)
    expect(await everythingIn(store)).toEqual(before)
  })
})

describe('taking a cut back', () => {
  const valuesIn = async (store: Store<unknown>) => (await readClothRecords(store)).records

  it('leaves the stash as it was, with flaws marked since', async () => {
    const store = await storeWithCloth([BAG, HAT])
    const before = await valuesIn(store)
    const { cut, offcuts } = await cutPanel(store, cutting('r-bag'))
    const shape = { form: 'round', centre: [500, 350], radius: 5 } as const
    await putGarment(store, aCloth({ flaws: [{ id: 'f', panel: offcuts[0]!.id, kind: 'hole', shape }] }))
    await undoCut(store, cut.id)
    expect(await valuesIn(store)).toEqual(before)
    expect((await store.database.get('garments', 'cloth'))?.value.flaws).toMatchObject([{ panel: 'outline' }])
    expect(await troubleIn(store)).toEqual([])
  })

  it('gives copies back to what is left of their reservation', async () => {
    const store = await storeWithCloth([BAG])
    const { cut } = await cutPanel(store, { ...cutting('r-bag'), pieces: [{ piece: 'body', copy: 1 }] })
    await undoCut(store, cut.id)
    const [{ pieces } = { pieces: [] }] = await reserved(store)
    expect(pieces.map(({ copy, panel }) => [copy, panel]).sort()).toEqual([
      [1, 'outline'],
      [2, 'outline'],
    ])
  })

  it('is refused once something was cut from an offcut, until that is taken back first', async () => {
    const store = await storeWithCloth([BAG, HAT])
    const before = await valuesIn(store)
    const first = await cutPanel(store, cutting('r-bag'))
    const second = await cutPanel(store, cutting('r-hat', first.offcuts[0]!.id))
    const refusal = await undoCut(store, first.cut.id).catch((error: unknown) => error)
    expect(refusal).toBeInstanceOf(CutAgain)
    expect(refusal).toMatchObject({ by: 'hat' })
    await undoCut(store, second.cut.id)
    await undoCut(store, first.cut.id)
    expect((await valuesIn(store)).reservations).toEqual(expect.arrayContaining([...before.reservations]))
    expect((await valuesIn(store)).cuts).toEqual([])
  })

  it('keeps what was reserved on an offcut since, and a copy laid elsewhere since stays there', async () => {
    const store = await storeWithCloth([BAG])
    const { cut, offcuts } = await cutPanel(store, cutting('r-bag'))
    const panel = offcuts[0]!.id
    const hat = { ...HAT, pieces: HAT.pieces.map((laid) => ({ ...laid, panel })) }
    await reserve(store, { reservation: hat })
    const anew = aReservation('r2', [laidAt('body', rectangle(200, 80, 0, 310), { copy: 1, panel })], 'bag')
    await reserve(store, { reservation: anew })
    await undoCut(store, cut.id)
    const copies = (await reserved(store)).flatMap(({ id, pieces }) =>
      pieces.map((laid) => `${id} ${laid.piece}#${laid.copy} ${laid.panel}`),
    )
    expect(copies.sort()).toEqual(['r-bag body#2 outline', 'r-hat brim#1 outline', 'r2 body#1 outline'])
    expect(await troubleIn(store)).toEqual([])
  })

  it('without its project only makes the panel whole', async () => {
    const store = await storeWithCloth([BAG])
    const { cut } = await cutPanel(store, cutting('r-bag'))
    await removeProject(store, 'bag')
    await undoCut(store, cut.id)
    expect(await valuesIn(store)).toEqual({ cuts: [], offcuts: [], reservations: [] })
  })
})

describe('an offcut', () => {
  it('that is thrown away is no cloth, until it is taken back', async () => {
    const store = await storeWithCloth([BAG])
    const { offcuts } = await cutPanel(store, cutting('r-bag'))
    const onto = { ...HAT, pieces: HAT.pieces.map((laid) => ({ ...laid, panel: offcuts[0]!.id })) }
    await keepOffcut(store, offcuts[0]!.id, false)
    await expect(reserve(store, { reservation: onto })).rejects.toBeInstanceOf(ClothTaken)
    await keepOffcut(store, offcuts[0]!.id, true)
    await reserve(store, { reservation: onto })
    expect(await troubleIn(store)).toEqual([])
  })
})

describe('removing', () => {
  it('a project releases its reservations, cuts stay, and all comes back in one', async () => {
    const store = await storeWithCloth([BAG, HAT])
    await cutPanel(store, { ...cutting('r-bag'), pieces: [{ piece: 'body', copy: 1 }] })
    const before = (await readClothRecords(store)).records
    const removal = await removeProject(store, 'bag')
    expect((await reserved(store)).map(({ id }) => id)).toEqual(['r-hat'])
    expect((await readClothRecords(store)).records.cuts).toHaveLength(1)
    expect(await restore(store, removal)).toEqual([])
    expect((await readClothRecords(store)).records).toEqual(before)
    expect((await store.database.get('projects', 'bag'))?.value.name).toBe('bag')
    expect(await store.database.getAll('removed')).toEqual([])
  })

  it('brings back all but a reservation whose cloth was promised meanwhile, which it names', async () => {
    const store = await storeWithCloth([BAG])
    const removal = await removeProject(store, 'bag')
    await reserve(store, { reservation: aReservation('r2', [laidAt('brim', rectangle(300, 300))], 'hat') })
    expect(await restore(store, removal)).toEqual([BAG])
    expect((await reserved(store)).map(({ id }) => id)).toEqual(['r2'])
    expect((await store.database.get('projects', 'bag'))?.value.name).toBe('bag')
  })

  it('a garment takes all that hangs on it along, and brings it back', async () => {
    const store = await storeWithCloth([BAG, HAT])
    await cutPanel(store, cutting('r-bag'))
    await addPhoto(store, 'cloth', { id: 'f1', width: 4, height: 3, takenAt: 5 }, new Blob(['jpeg']))
    const before = await everythingIn(store)
    const removal = await removeGarment(store, 'cloth')
    const after = await everythingIn(store)
    for (const name of ['garments', 'reservations', 'cuts', 'offcuts', 'photos', 'pictures'])
      expect(after[name]).toEqual([])
    expect((after.removed as unknown[]).length).toBeGreaterThanOrEqual(5)
    await restore(store, removal)
    const valuesOf = (all: Record<string, unknown>, name: string) =>
      (all[name] as { value: unknown }[]).map(({ value }) => value)
    const restored = await everythingIn(store)
    for (const name of ['garments', 'reservations', 'cuts', 'offcuts', 'photos'])
      expect(valuesOf(restored, name)).toEqual(valuesOf(before, name))
    expect(restored.pictures).toEqual(['f1'])
    expect(restored.removed).toEqual(before.removed)
  })

  it('notes each removal with its time, and a record put again is no removed one', async () => {
    let now = 100
    const store = await testStore({ now: () => now })
    await putProject(store, testProject({ id: 'bag' }))
    now = 200
    await removeProject(store, 'bag')
    expect(await store.database.getAll('removed')).toEqual([{ store: 'projects', id: 'bag', removedAt: 200 }])
    await removeProject(store, 'never-there')
    expect(await store.database.count('removed')).toBe(1)
    await putProject(store, testProject({ id: 'bag' }))
    expect(await store.database.getAll('removed')).toEqual([])
  })
})

describe('a photo', () => {
  const facts = { id: 'f1', width: 400, height: 300, takenAt: 5 }

  it('comes with its picture and its place in the garment’s list, and goes likewise', async () => {
    const store = await storeWithCloth()
    expect(await addPhoto(store, 'cloth', facts, new Blob(['one']))).toBe(true)
    expect(await addPhoto(store, 'cloth', { ...facts, id: 'f2' }, new Blob(['two']))).toBe(true)
    expect((await store.database.get('garments', 'cloth'))?.value.photos).toEqual(['f1', 'f2'])
    expect((await readPhotos(store)).records).toHaveLength(2)
    expect(await readPicture(store, 'f1')).not.toBeNull()
    await removePhoto(store, 'cloth', 'f1')
    expect((await store.database.get('garments', 'cloth'))?.value.photos).toEqual(['f2'])
    expect(await readPicture(store, 'f1')).toBeNull()
    expect((await readPhotos(store)).records.map(({ id }) => id)).toEqual(['f2'])
  })

  it('of a garment that is gone is not stored', async () => {
    const store = await storeWithCloth()
    expect(await addPhoto(store, 'gone', facts, new Blob(['one']))).toBe(false)
    expect(await everythingIn(store)).toMatchObject({ photos: [], pictures: [] })
  })
})
