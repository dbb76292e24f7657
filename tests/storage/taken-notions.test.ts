import { describe, expect, it } from 'vitest'
import { type Notion, type NotionCut, withCutBack, withoutCut } from '../../src/core/notions/index.ts'
import type { Store } from '../../src/storage/open-store.ts'
import { putNotion, readNotions, removeNotion } from '../../src/storage/stores/notions.ts'
import { giveBackNotions, NotionsChanged, takeNotions } from '../../src/storage/stores/taken-notions.ts'
import { testProject } from '../support/records.ts'
import { testStore } from '../support/storage.ts'

const ELASTIC: Notion = {
  id: 'elastic',
  kind: 'elastic',
  name: '',
  width: 25,
  colour: '',
  lengths: [2000, 760],
  count: 0,
  price: null,
  place: '',
  note: '',
}
const BUTTONS: Notion = { ...ELASTIC, id: 'buttons', kind: 'button', lengths: [], count: 6 }
const WAIST: NotionCut = { notion: 'elastic', from: 760, takes: [{ need: 'waist', amount: 740 }], left: 20 }
const LEGS: NotionCut = {
  notion: 'elastic',
  from: 2000,
  takes: [
    { need: 'legs', amount: 450 },
    { need: 'legs', amount: 450 },
  ],
  left: 1100,
}
const FRONT: NotionCut = { notion: 'buttons', from: 6, takes: [{ need: 'front', amount: 5 }], left: 1 }

const PROJECT = testProject({ id: 'p' })

async function filled(): Promise<Store<unknown>> {
  const store = await testStore()
  await putNotion(store, ELASTIC)
  await putNotion(store, BUTTONS)
  await store.database.put('projects', { id: 'p', value: PROJECT, keptAt: 1, changedAt: 1 })
  return store
}

async function held(store: Store<unknown>) {
  const { records } = await readNotions(store)
  const owned = Object.fromEntries(records.map(({ value }) => [value.id, [value.lengths, value.count]]))
  return { owned, taken: (await store.database.get('projects', 'p'))?.value.taken }
}

describe('notions cut for a project', () => {
  it('go from what is owned to what the project has taken, in one stroke, and back', async () => {
    const store = await filled()
    const before = await held(store)
    await takeNotions(store, 'p', [WAIST, LEGS, FRONT])
    expect(await held(store)).toEqual({
      owned: { elastic: [[1100], 0], buttons: [[], 1] },
      taken: [
        { need: 'waist', notion: 'elastic', amount: 740 },
        { need: 'legs', notion: 'elastic', amount: 450 },
        { need: 'legs', notion: 'elastic', amount: 450 },
        { need: 'front', notion: 'buttons', amount: 5 },
      ],
    })
    await giveBackNotions(store, 'p', [WAIST, LEGS, FRONT])
    expect(await held(store)).toEqual(before)
  })

  it('stay as they are, all of them, when one length is no longer there', async () => {
    const store = await filled()
    const before = await held(store)
    const gone: NotionCut = { ...WAIST, from: 800, left: 60 }
    await expect(takeNotions(store, 'p', [LEGS, gone])).rejects.toBeInstanceOf(NotionsChanged)
    await expect(
      takeNotions(store, 'p', [FRONT, { ...FRONT, takes: [{ need: 'x', amount: 2 }] }]),
    ).rejects.toBeInstanceOf(NotionsChanged)
    await expect(takeNotions(store, 'none', [LEGS])).rejects.toBeInstanceOf(NotionsChanged)
    expect(await held(store)).toEqual(before)
  })

  it('come back to a project whose notion was removed since, without the notion', async () => {
    const store = await filled()
    await takeNotions(store, 'p', [WAIST])
    await removeNotion(store, 'elastic')
    await giveBackNotions(store, 'p', [WAIST])
    expect(await held(store)).toEqual({ owned: { buttons: [[], 6] }, taken: [] })
  })
})

describe('a notion', () => {
  it('loses an end too short for anything, and has it again when the cut is taken back', () => {
    const rest = withoutCut(ELASTIC, WAIST) as Notion
    expect(rest.lengths).toEqual([2000])
    expect(withCutBack(rest, WAIST).lengths).toEqual([2000, 760])
  })

  it('gets the pieces by themselves when the end they came off has been used since', () => {
    const rest = withoutCut(ELASTIC, LEGS) as Notion
    expect(rest.lengths).toEqual([1100, 760])
    expect(withCutBack({ ...rest, lengths: [760] }, LEGS).lengths).toEqual([760, 450, 450])
  })

  it('that is removed is remembered as removed until it is there again', async () => {
    const store = await filled()
    await removeNotion(store, 'elastic')
    await removeNotion(store, 'never there')
    expect(await store.database.getAll('removed')).toMatchObject([{ store: 'notions', id: 'elastic' }])
    await putNotion(store, ELASTIC)
    expect(await store.database.getAll('removed')).toEqual([])
  })
})
