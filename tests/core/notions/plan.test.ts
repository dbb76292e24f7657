import { describe, expect, it } from 'vitest'
import {
  type Needed,
  type Notion,
  type NotionNeed,
  notionCautions,
  planNotions,
  ringStretch,
} from '../../../src/core/notions/index.ts'

function notion(change: Partial<Notion> & Pick<Notion, 'id' | 'kind'>): Notion {
  return {
    name: '',
    width: null,
    colour: '',
    lengths: [],
    count: 0,
    price: null,
    place: '',
    note: '',
    ...change,
  }
}

function need(change: Partial<NotionNeed> & Pick<NotionNeed, 'id' | 'kind'>): NotionNeed {
  return { name: change.id, width: null, amount: { form: 'count', count: {} }, ...change }
}

const lengths = (of: NotionNeed, ...cut: number[]): Needed => ({
  need: of,
  lengths: cut,
  count: 0,
  unknown: false,
})
const count = (of: NotionNeed, many: number): Needed => ({
  need: of,
  lengths: [],
  count: many,
  unknown: false,
})

const WAIST = need({ id: 'waist', kind: 'elastic', width: 25 })
const LEGS = need({ id: 'legs', kind: 'elastic', width: 10 })

describe('needs laid into what is owned', () => {
  it('cuts each from an elastic of its width, and lists what is short by kind and width', () => {
    const owned = [
      notion({ id: 'wide', kind: 'elastic', width: 25.4, lengths: [5000, 760] }),
      notion({ id: 'narrow', kind: 'elastic', width: 10, lengths: [500] }),
    ]
    expect(planNotions([lengths(WAIST, 740), lengths(LEGS, 450, 450)], owned)).toEqual({
      cuts: [
        { notion: 'wide', from: 760, takes: [{ need: 'waist', amount: 740 }], left: 20 },
        { notion: 'narrow', from: 500, takes: [{ need: 'legs', amount: 450 }], left: 50 },
      ],
      toBuy: [{ kind: 'elastic', names: ['legs'], width: 10, lengths: [450], count: 0 }],
      proved: true,
    })
  })

  it('gives a need of any width what no need of one width wants', () => {
    const any = need({ id: 'any', kind: 'elastic' })
    const owned = [
      notion({ id: 'a', kind: 'elastic', width: 25, lengths: [740] }),
      notion({ id: 'b', kind: 'elastic', width: null, lengths: [900] }),
    ]
    const { cuts, toBuy } = planNotions([lengths(any, 700), lengths(WAIST, 740)], owned)
    expect(cuts.map(({ notion: id, takes }) => [id, takes[0]?.need])).toEqual([
      ['a', 'waist'],
      ['b', 'any'],
    ])
    expect(toBuy).toEqual([])
  })

  it('takes widths up to 1 mm off, and none of unknown width where one is asked for', () => {
    const wide = (width: number | null) => [notion({ id: 'x', kind: 'elastic', width, lengths: [800] })]
    const short = (width: number | null) => planNotions([lengths(WAIST, 740)], wide(width)).toBuy.length
    expect([24, 26, 23.9, 26.1, null].map(short)).toEqual([0, 0, 1, 1, 1])
  })

  it('keeps to a colour that is asked for', () => {
    const owned = [
      notion({ id: 'white', kind: 'elastic', width: 25, colour: 'White', lengths: [740] }),
      notion({ id: 'black', kind: 'elastic', width: 25, colour: 'black, soft', lengths: [2000] }),
    ]
    const from = (colours: Record<string, string>) =>
      planNotions([lengths(WAIST, 740)], owned, colours).cuts.map(({ notion: id }) => id)
    expect(from({})).toEqual(['white'])
    expect(from({ waist: 'Black' })).toEqual(['black'])
    expect(from({ waist: 'red' })).toEqual([])
  })

  it('counts rings, zips and buttons, from one bag where one is enough', () => {
    const buttons = need({ id: 'front', kind: 'button', width: 15 })
    const owned = [
      notion({ id: 'tin', kind: 'button', width: 15, count: 3 }),
      notion({ id: 'card', kind: 'button', width: 15, count: 6 }),
      notion({ id: 'ring', kind: 'ring', width: 15, count: 9 }),
    ]
    expect(planNotions([count(buttons, 5)], owned).cuts).toEqual([
      { notion: 'card', from: 6, takes: [{ need: 'front', amount: 5 }], left: 1 },
    ])
    const { cuts, toBuy } = planNotions([count(buttons, 11)], owned)
    expect(cuts.map(({ left }) => left)).toEqual([0, 0])
    expect(toBuy).toEqual([{ kind: 'button', names: ['front'], width: 15, lengths: [], count: 2 }])
  })

  it('takes for “other” only what is called the same', () => {
    const owned = [notion({ id: 'x', kind: 'other', name: 'Press stud', count: 5 })]
    expect(planNotions([count(need({ id: 'press stud', kind: 'other' }), 1)], owned).toBuy).toEqual([])
    expect(planNotions([count(need({ id: 'toggle', kind: 'other' }), 1)], owned).toBuy).toHaveLength(1)
  })
})

describe('cautions', () => {
  const waist: NotionNeed = {
    ...WAIST,
    amount: { form: 'formula', each: 1, edge: { S: 700 }, ratio: 0.9, extra: 20 },
    passes: { S: 940 },
  }

  it('tells how far an elastic must stretch to let the hips through, its overlap left out', () => {
    expect(ringStretch(waist, 'S')).toMatchObject({ ring: 630, passes: 940, doubtful: false })
    expect(ringStretch(waist, 'S')?.stretch).toBeCloseTo((100 * (940 - 630)) / 630, 9)
    expect(ringStretch({ ...waist, passes: { S: 1200 } }, 'S')).toMatchObject({ doubtful: true })
    expect(ringStretch(waist, 'M')).toBeNull()
    expect(ringStretch({ ...waist, kind: 'ribbon' }, 'S')).toBeNull()
  })

  it('brings up cords and small parts on children’s patterns alone', () => {
    const cord = need({ id: 'c', kind: 'cord' })
    const button = need({ id: 'b', kind: 'button' })
    expect(notionCautions([cord, button], ['unwashed'])).toEqual([])
    expect(notionCautions([cord], ['child-cords', 'small-parts'])).toEqual(['child-cords'])
    expect(notionCautions([button, WAIST], ['child-cords', 'small-parts', 'blades'])).toEqual(['small-parts'])
  })
})
