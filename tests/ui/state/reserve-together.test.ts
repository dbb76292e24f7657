import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { askedOf } from '../../../src/core/planning/donors/asked.ts'
import { donorOf } from '../../../src/core/planning/donors/donor.ts'
import { findDonors } from '../../../src/core/planning/donors/find-donors.ts'
import { donorsTogether, type Together } from '../../../src/core/planning/donors/together.ts'
import { uncutCopies } from '../../../src/core/planning/project-question.ts'
import type { Project } from '../../../src/core/stash/project.ts'
import { ClothTaken } from '../../../src/storage/cloth/refusals.ts'
import { reserve } from '../../../src/storage/cloth/reserve.ts'
import { putGarment } from '../../../src/storage/stores/garments.ts'
import { clothRecords, clothRefusal, openCloth } from '../../../src/ui/state/cloth-state.ts'
import type { RoleSearch } from '../../../src/ui/state/donors.ts'
import { theStore } from '../../../src/ui/state/keeper.ts'
import { openProjects, saveProject } from '../../../src/ui/state/projects-state.ts'
import { reserveTogether } from '../../../src/ui/state/reserve-together.ts'
import { openStash } from '../../../src/ui/state/stash-state.ts'
import { boxPiece, patternOf } from '../../support/check-questions.ts'
import { UNHURRIED } from '../../support/donors.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { aCloth, aReservation, laidAt } from '../../support/stash.ts'
import { troubleIn } from '../../support/stash-store.ts'
import { testProject } from '../../support/two-devices.ts'

const pattern = patternOf([
  boxPiece('outside', 500, 300, { copies: 2 }),
  boxPiece('inside', 400, 200, { role: 'lining' }),
])
const bag = testProject({ id: 'bag', pattern, version: pattern.versions[0]?.id ?? '', size: 'M' })
const cloths = [
  aCloth({ id: 'large', outline: rectangle(500, 600) }),
  aCloth({ id: 'small', outline: rectangle(400, 200) }),
]

/** What the donors' screen has found once it has looked at everything. */
function searched(project: Project): readonly RoleSearch[] {
  return ['main', 'lining'].map((role): RoleSearch => {
    const copies = uncutCopies(project, [role], clothRecords.value)
    const question = { ...project, roles: [role], ...(copies && { copies }) }
    const asked = askedOf(question)
    if (!asked.ok) throw new Error(JSON.stringify(asked.faults))
    const donors = cloths.map((cloth) => donorOf(cloth, 0))
    const rows = [...findDonors(asked.value, donors, UNHURRIED)]
    const byDonor = new Map(rows.map((row) => [row.donor, row]))
    return { role, question, asked: asked.value, rows: byDonor, ways: [], state: 'ended' }
  })
}

function best(searches: readonly RoleSearch[]): Together {
  const roles = searches.map(({ role, asked, rows }) => ({
    role,
    area: asked.area,
    rows: [...rows.values()],
  }))
  const [first] = donorsTogether(roles, 1)
  if (!first) throw new Error('no proposal')
  return first
}

beforeEach(async () => {
  await Promise.all([openStash(), openProjects(), openCloth()])
  const store = await theStore()
  for (const cloth of cloths) await putGarment(store, cloth)
  for (const id of ['bag', 'hat']) saveProject(testProject({ ...bag, id, name: id }))
})

describe('a donor for each role', () => {
  it('has none of them reserved when one is taken meanwhile, and all of them otherwise', async () => {
    const store = await theStore()
    const searches = searched(bag)
    const proposal = best(searches)
    expect(proposal.parts.map(({ role, row }) => [role, row.donor])).toEqual([
      ['main', 'large'],
      ['lining', 'small'],
    ])
    const taken = { ...aReservation('r-hat', [laidAt('inside', rectangle(50, 50))], 'hat'), garment: 'small' }
    await vi.waitFor(async () => expect(await store.database.get('projects', 'hat')).toBeDefined())
    await reserve(store, { reservation: taken })

    expect(await reserveTogether(bag, proposal, searches)).toBe(false)
    expect(clothRefusal.value).toBeInstanceOf(ClothTaken)
    await vi.waitFor(() => expect(clothRecords.value.reservations.map(({ id }) => id)).toEqual(['r-hat']))

    await reserve(store, { reservation: { ...taken, garment: 'large', pieces: [] } })
    expect(await reserveTogether(bag, proposal, searches)).toBe(true)
    await vi.waitFor(() => {
      const mine = clothRecords.value.reservations.filter(({ project }) => project === 'bag')
      expect(mine.map(({ garment, pieces }) => [garment, pieces.length]).sort()).toEqual([
        ['large', 2],
        ['small', 1],
      ])
    })
    expect(await troubleIn(store)).toEqual([])
  })
})
