import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { ClothTaken } from '../../../src/storage/cloth/refusals.ts'
import { reserve as reserveStored } from '../../../src/storage/cloth/reserve.ts'
import { putGarment } from '../../../src/storage/stores/garments.ts'
import {
  clothRecords,
  clothRefusal,
  cutNow,
  keepOffcut,
  openCloth,
  releaseReservation,
  reserve,
  reserveLay,
  undoCut,
} from '../../../src/ui/state/cloth-state.ts'
import { storeTrouble, theStore } from '../../../src/ui/state/keeper.ts'
import {
  changeProject,
  dropProject,
  openProjects,
  projectById,
  saveProject,
} from '../../../src/ui/state/projects-state.ts'
import { notRestored } from '../../../src/ui/state/restore-removal.ts'
import { dropGarment, garmentById, openStash } from '../../../src/ui/state/stash-state.ts'
import { undoOffer } from '../../../src/ui/state/undo.ts'
import { answered, asking, boxPiece, patternOf } from '../../support/check-questions.ts'
import { rectangle, within } from '../../support/lay-problems.ts'
import { aCloth, aReservation, laidAt } from '../../support/stash.ts'
import { BAG, HAT } from '../../support/stash-store.ts'
import { testStore } from '../../support/storage.ts'
import { testProject } from '../../support/two-devices.ts'

/** Ids of what is reserved now. */
const reserved = () => clothRecords.value.reservations.map(({ id }) => id).sort()
const soon = (check: () => void) => vi.waitFor(check, { timeout: 5000, interval: 5 })

/** The app's own store: a cloth with the projects bag and hat, nothing reserved. */
beforeEach(async () => {
  await Promise.all([openStash(), openProjects(), openCloth()])
  for (const { id } of clothRecords.value.reservations) await releaseReservation({ id }, '')
  for (const id of ['bag', 'hat']) saveProject(testProject({ id, name: id }))
  const old = garmentById('cloth')
  if (old) dropGarment(old, '')
  await soon(() => expect(clothRecords.value).toEqual({ cuts: [], offcuts: [], reservations: [] }))
  await putGarment(await theStore(), aCloth())
  await soon(() => expect(garmentById('cloth')).not.toBeNull())
  undoOffer.value = null
})

describe('reserving', () => {
  it('for a project saved a moment ago, and shown when it is stored', async () => {
    saveProject(testProject({ id: 'new' }))
    expect(await reserve({ reservation: { ...BAG, project: 'new' } })).not.toBeNull()
    await soon(() => expect(reserved()).toEqual(['r-bag']))
    expect(storeTrouble.value).toBeNull()
  })

  it('says why it cannot, until something succeeds', async () => {
    await reserve({ reservation: BAG })
    const over = aReservation('r-hat', [laidAt('brim', rectangle(100, 100))], 'hat')
    expect(await reserve({ reservation: over })).toBeNull()
    expect(clothRefusal.value).toBeInstanceOf(ClothTaken)
    expect(await reserve({ reservation: HAT })).not.toBeNull()
    expect(clothRefusal.value).toBeNull()
    await soon(() => expect(reserved()).toEqual(['r-bag', 'r-hat']))
  })

  it('a lay puts its pieces in place of those asked, and leaves the others of that reservation', async () => {
    const lining = laidAt('lining', rectangle(100, 400, 500, 0))
    await reserve({ reservation: aReservation('r1', [laidAt('body', rectangle(50, 50)), lining], 'bag') })
    await soon(() => expect(reserved()).toEqual(['r1']))
    const question = asking(patternOf([boxPiece('body', 400, 300)]), aCloth())
    const of = { project: 'bag', garment: 'cloth' }
    const done = await reserveLay({ answer: answered(question, within(5)), question, of, replaces: 'r1' })
    expect(done?.pieces.map(({ piece }) => piece).sort()).toEqual(['body', 'lining'])
    expect(done?.id).toBe('r1')
  })

  it('in another tab is shown here', async () => {
    const otherTab = await testStore({ name: 'cutworth' })
    await reserveStored(otherTab, { reservation: HAT })
    await soon(() => expect(reserved()).toEqual(['r-hat']))
  })
})

describe('taking back', () => {
  it('a release', async () => {
    await reserve({ reservation: BAG })
    await releaseReservation(BAG, 'Released.')
    await soon(() => expect(reserved()).toEqual([]))
    expect(undoOffer.value?.said).toBe('Released.')
    undoOffer.value?.undo()
    await soon(() => expect(reserved()).toEqual(['r-bag']))
  })

  it('a release whose cloth was promised meanwhile names what is lost', async () => {
    await reserve({ reservation: BAG })
    await releaseReservation(BAG, 'Released.')
    const { undo } = undoOffer.value!
    await reserve({ reservation: aReservation('r2', [laidAt('brim', rectangle(50, 50))], 'hat') })
    undo()
    await soon(() => expect(notRestored.value).toEqual([BAG]))
    expect(reserved()).toEqual(['r2'])
  })

  it('a cut, and an offcut thrown away', async () => {
    await reserve({ reservation: BAG })
    const done = await cutNow({ reservation: 'r-bag', panel: 'outline' }, 'Cut.')
    const offcut = done!.offcuts[0]!.id
    await soon(() => expect(clothRecords.value.offcuts.map(({ id }) => id)).toEqual([offcut]))
    const undo = undoOffer.value!.undo
    await keepOffcut(offcut, false, 'Thrown away.')
    await soon(() => expect(clothRecords.value.offcuts[0]?.kept).toBe(false))
    undoOffer.value?.undo()
    await soon(() => expect(clothRecords.value.offcuts[0]?.kept).toBe(true))
    undo()
    await soon(() => expect(clothRecords.value).toEqual({ cuts: [], offcuts: [], reservations: [BAG] }))
    expect(await undoCut(done!.cut.id)).toBe(false)
    expect(clothRefusal.value).toMatchObject({ name: 'NoLongerThere' })
  })

  it('the removal of a project, with what it had reserved', async () => {
    changeProject('bag', { note: 'for Sunday' })
    await reserve({ reservation: BAG })
    dropProject(projectById('bag')!, 'Removed.')
    await soon(() => expect(reserved()).toEqual([]))
    undoOffer.value?.undo()
    await soon(() => expect(reserved()).toEqual(['r-bag']))
    await soon(() => expect(projectById('bag')?.note).toBe('for Sunday'))
  })

  it('the removal of a garment at once, before it is even stored', async () => {
    await reserve({ reservation: BAG })
    await reserve({ reservation: HAT })
    dropGarment(garmentById('cloth')!, 'Removed.')
    undoOffer.value?.undo()
    await soon(() => expect(garmentById('cloth')).not.toBeNull())
    await soon(() => expect(reserved()).toEqual(['r-bag', 'r-hat']))
  })
})
