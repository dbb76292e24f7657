import 'fake-indexeddb/auto'
import { describe, expect, it, vi } from 'vitest'
import { projectStage } from '../../../src/core/stash/progress.ts'
import { clothRecords, openCloth } from '../../../src/ui/state/cloth-state.ts'
import { hasDemo, loadDemo, removeDemo } from '../../../src/ui/state/demo.ts'
import { storeTrouble } from '../../../src/ui/state/keeper.ts'
import { changeNotion, newNotion, notions, openNotions } from '../../../src/ui/state/notions-state.ts'
import { openProjects, projects } from '../../../src/ui/state/projects-state.ts'
import { addGarment, changeGarment, garments, openStash } from '../../../src/ui/state/stash-state.ts'
import { undoOffer } from '../../../src/ui/state/undo.ts'
import { testGarment } from '../../support/records.ts'

/** Asks until it is so: a busy machine is slow, not wrong. */
const soon = (so: () => void) => vi.waitFor(so, { timeout: 90_000 })

describe('the demo', () => {
  it('comes whole, once, beside what is hers, and goes again but for that', async () => {
    await Promise.all([openStash(), openNotions(), openProjects(), openCloth()])
    addGarment(testGarment({ id: 'hers' }))
    changeNotion(newNotion('zip'), { name: 'Hers' })
    expect(hasDemo.value).toBe(false)

    await Promise.all([loadDemo(), loadDemo()])
    await soon(() => expect(garments.value.length).toBeGreaterThan(30))
    await soon(() => expect(notions.value.length).toBeGreaterThan(1))
    await soon(() => expect(clothRecords.value.cuts.length).toBeGreaterThan(0))
    await soon(() => expect(projects.value).toHaveLength(3))
    const stages = projects.value.map((project) => projectStage(project, clothRecords.value))
    expect(stages.sort()).toEqual(['cutting', 'planned', 'reserved'])
    expect(hasDemo.value).toBe(true)
    const [many, some] = [garments.value.length, notions.value.length]
    await loadDemo()
    expect([garments.value.length, notions.value.length]).toEqual([many, some])

    // A change that is still on its way to the disk must not bring the garment back.
    changeGarment('demo-sand-chinos', { note: 'seen' })
    await removeDemo()
    await soon(() => expect(hasDemo.value).toBe(false))
    expect(garments.value.map(({ id }) => id)).toEqual(['hers'])
    expect(notions.value.map(({ name }) => name)).toEqual(['Hers'])
    expect(projects.value).toEqual([])
    expect(clothRecords.value).toEqual({ cuts: [], offcuts: [], reservations: [] })

    undoOffer.value?.undo()
    await soon(() => expect(garments.value).toHaveLength(many))
    await soon(() => expect(clothRecords.value.reservations.length).toBeGreaterThan(1))
    expect(garments.value.find(({ id }) => id === 'demo-sand-chinos')?.note).toBe('seen')
    expect(storeTrouble.value).toBeNull()
  })
})
