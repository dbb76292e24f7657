import { describe, expect, it } from 'vitest'
import { kindOf } from '../../../src/core/garments/kinds.ts'
import type { HemmedPanel } from '../../../src/core/garments/opening/keep-hems.ts'
import { panelsKeepingHems } from '../../../src/core/garments/panels-of.ts'
import { emptyGarment, startingMeasures } from '../../../src/core/garments/starting.ts'
import type { Point } from '../../../src/core/geometry/types.ts'
import { mergeContents } from '../../../src/core/records/merge.ts'
import type { Contents } from '../../../src/core/records/record.ts'
import {
  contents,
  GROUND,
  kept,
  laid,
  rectangle,
  side,
  testCut,
  testOffcut,
  testProject,
  testReservation,
} from '../../support/two-devices.ts'

const merge = (a: Contents, b: Contents) => mergeContents(side('phone', a), side('tablet', b))
const hat = kept(testProject({ id: 'hat', name: 'Hat' }), 1)
const ground = { ...GROUND, projects: [...GROUND.projects, hat] }

/** A reservation of one piece, a square of 100 mm at (x, y). */
function reserved(id: string, project: string, x: number, y: number, at: number, panel = 'front') {
  return kept(testReservation({ id, project, pieces: [laid('body', panel, rectangle(x, y, 100, 100))] }), at)
}

describe('two reservations of the same place', () => {
  it('leave it to the later one, and the other is released by name', () => {
    const a = contents({ ...ground, reservations: [reserved('r1', 'bag', 0, 0, 5)] })
    const b = contents({ ...ground, reservations: [reserved('r2', 'hat', 50, 50, 6)] })
    const { contents: after, settlements } = merge(a, b)
    expect(after.records.reservations.map(({ id }) => id)).toEqual(['r2'])
    expect(after.removed).toEqual([{ store: 'reservations', id: 'r1', removedAt: 6 }])
    expect(settlements).toEqual([
      {
        store: 'reservations',
        id: 'r1',
        what: 'released',
        why: 'place-taken',
        by: { store: 'reservations', id: 'r2' },
      },
    ])
  })

  it('both stay when they only touch', () => {
    const a = contents({ ...ground, reservations: [reserved('r1', 'bag', 0, 0, 5)] })
    const b = contents({ ...ground, reservations: [reserved('r2', 'hat', 100, 0, 6)] })
    expect(merge(a, b).settlements).toEqual([])
  })
})

describe('a piece on the fold of a hem', () => {
  it('has the cloth turned up behind it too', () => {
    const garment = { ...emptyGarment('t-shirt', 'g1'), measures: startingMeasures(kindOf('t-shirt'), 'M') }
    const panel = panelsKeepingHems(garment).find(({ hems }) => hems.length > 0) as HemmedPanel
    const k = panel.hems[0] as number
    const [from, to] = [panel.outline[k], panel.outline[(k + 1) % panel.outline.length]] as [Point, Point]
    // The hem of a T-shirt lies level, its panel above it.
    expect(from[1]).toBeCloseTo(to[1])
    const above = laid('body', panel.id, rectangle(from[0], from[1], to[0] - from[0], 100))
    const below = laid('cuff', panel.id, rectangle(from[0] + 20, from[1] - 10, 100, 5))
    const shirt = { ...ground, garments: [kept(garment, 1)] }
    const a = contents({ ...shirt, reservations: [kept(testReservation({ pieces: [above] }), 6)] })
    const b = contents({
      ...shirt,
      reservations: [kept(testReservation({ id: 'r2', project: 'hat', pieces: [below] }), 5)],
    })
    expect(merge(a, b).settlements).toMatchObject([{ id: 'r2', why: 'place-taken' }])
  })
})

describe('a panel cut on one device', () => {
  const cut = {
    ...ground,
    cuts: [kept(testCut({ offcuts: ['o1'] }), 9)],
    offcuts: [kept(testOffcut(), 9)],
  }

  it('keeps a reservation made on the other, on the offcut that holds it', () => {
    const b = contents({ ...ground, reservations: [reserved('r2', 'hat', 0, 250, 6)] })
    const { contents: after, settlements } = merge(contents(cut), b)
    expect(after.records.reservations[0]?.value.pieces[0]?.panel).toBe('o1')
    expect(settlements).toMatchObject([{ id: 'r2', what: 'moved' }])
  })

  it('releases one whose cloth was cut away', () => {
    const b = contents({ ...ground, reservations: [reserved('r2', 'hat', 0, 150, 6)] })
    const { contents: after, settlements } = merge(contents(cut), b)
    expect(after.records.reservations).toEqual([])
    expect(settlements).toMatchObject([{ id: 'r2', what: 'released', why: 'no-cloth' }])
  })

  it('and whole again on the other takes the reservations of its offcut back', () => {
    const undone = [
      { store: 'cuts', id: 'c1', removedAt: 12 },
      { store: 'offcuts', id: 'o1', removedAt: 12 },
    ] as const
    const b = contents({ ...cut, reservations: [reserved('r2', 'hat', 0, 250, 11, 'o1')] })
    const { contents: after, settlements } = merge(contents(ground, undone), b)
    expect(after.records.cuts).toEqual([])
    expect(after.records.reservations[0]?.value.pieces[0]?.panel).toBe('front')
    expect(settlements).toMatchObject([{ id: 'r2', what: 'moved' }])
  })

  it('and on the other too stays as it was cut later; nothing of the earlier cut is left', () => {
    const other = contents({
      ...ground,
      cuts: [
        kept(testCut({ id: 'c2', project: 'hat', offcuts: ['o2'] }), 7),
        kept(testCut({ id: 'c3', panel: 'o2', offcuts: ['o3'] }), 20),
      ],
      offcuts: [
        kept(testOffcut({ id: 'o2', cut: 'c2', outline: rectangle(0, 100, 500, 400) }), 7),
        kept(testOffcut({ id: 'o3', cut: 'c3', outline: rectangle(0, 300, 500, 200) }), 20),
      ],
      reservations: [reserved('r3', 'hat', 0, 350, 21, 'o3')],
    })
    const { contents: after, settlements } = merge(contents(cut), other)
    expect(after.records.cuts.map(({ id }) => id)).toEqual(['c1'])
    expect(after.records.offcuts.map(({ id }) => id)).toEqual(['o1'])
    expect(after.records.reservations[0]?.value.pieces[0]?.panel).toBe('o1')
    expect(settlements).toMatchObject([
      { id: 'c2', what: 'cut-twice', by: { id: 'c1' } },
      { id: 'r3', what: 'moved' },
    ])
  })
})

describe('a copy of a piece', () => {
  it('cut on one device is not still reserved on the other', () => {
    const pieces = [laid('body', 'front', rectangle(0, 0, 100, 100))]
    const a = contents({ ...ground, cuts: [kept(testCut({ panel: 'back', pieces }), 9)] })
    const both = [...pieces, laid('tie', 'front', rectangle(200, 0, 50, 50))]
    const b = contents({ ...ground, reservations: [kept(testReservation({ pieces: both }), 12)] })
    const { contents: after, settlements } = merge(a, b)
    expect(after.records.reservations[0]?.value.pieces.map(({ piece }) => piece)).toEqual(['tie'])
    expect(settlements).toMatchObject([{ what: 'copies-taken-off', copies: 1 }])
  })
})

describe('a garment removed on one device', () => {
  const gone = [{ store: 'garments', id: 'g1', removedAt: 8 }] as const

  it('stays when the other has a reservation on it that the first never knew', () => {
    const a = contents({ projects: ground.projects }, gone)
    const b = contents({ ...ground, reservations: [reserved('r2', 'hat', 0, 0, 6)] })
    const { contents: after, settlements } = merge(a, b)
    expect(after.records.garments).toMatchObject([{ id: 'g1', changedAt: 9 }])
    expect(after.removed).toEqual([])
    expect(settlements).toMatchObject([{ store: 'garments', id: 'g1', what: 'kept-for', by: { id: 'r2' } }])
  })

  it('goes when nothing new hangs on it, and comes back when it was changed since', () => {
    const a = contents({ projects: ground.projects }, gone)
    expect(merge(a, contents(ground)).contents.records.garments).toEqual([])
    const changed = contents({
      ...ground,
      garments: GROUND.garments.map((each) => ({ ...each, changedAt: 9 })),
    })
    expect(merge(a, changed).contents.records.garments).toHaveLength(1)
  })
})

describe('what hangs on a garment that nobody has', () => {
  it('goes, and is listed', () => {
    const a = contents({ ...ground, garments: [], reservations: [reserved('r1', 'bag', 0, 0, 5)] })
    const { contents: after, settlements } = merge(a, contents({}))
    expect(after.records.reservations).toEqual([])
    expect(settlements).toMatchObject([{ id: 'r1', what: 'orphan-gone' }])
  })
})
