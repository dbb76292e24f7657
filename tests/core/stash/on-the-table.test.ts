import { describe, expect, it } from 'vitest'
import { cutSheet } from '../../../src/core/cut-sheet/cut-sheet.ts'
import type { Garment } from '../../../src/core/garments/garment.ts'
import { kindOf } from '../../../src/core/garments/kinds.ts'
import { emptyGarment, startingMeasures } from '../../../src/core/garments/starting.ts'
import { clothOf, type FreePanel } from '../../../src/core/stash/cloth-of.ts'
import { onTheTable } from '../../../src/core/stash/on-the-table.ts'
import type { Reservation } from '../../../src/core/stash/reservation.ts'
import { testPattern } from '../../support/records.ts'
import { laid, rectangle, testCut, testOffcut, testReservation } from '../../support/two-devices.ts'

const none = { reservations: [], cuts: [], offcuts: [] }

function remnant(traits: Garment['traits']): Garment {
  return { ...emptyGarment('cloth', 'g1'), measures: { 'cloth-width': 1400, 'cloth-length': 1000 }, traits }
}

function tShirt(): Garment {
  return { ...emptyGarment('t-shirt', 'g1'), measures: startingMeasures(kindOf('t-shirt'), 'M') }
}

function panelOf(garment: Garment, id: string, reservations: readonly Reservation[] = []): FreePanel {
  return clothOf(garment, { ...none, reservations }).panels.find((panel) => panel.id === id)!
}

describe('a length of cloth', () => {
  it('loses its selvedges first, and distances are from where they were cut off', () => {
    const garment = remnant({ selvedges: true, hemmed: false })
    const panel = panelOf(garment, 'cloth')
    const table = onTheTable(garment, panel)
    expect(table.takeOff).toEqual([{ along: 'selvedge', width: 10 }])
    // 200 mm from the cloth's own left edge, of which the selvedge takes 10.
    const piece = laid('body', 'cloth', rectangle(200, 300, 400, 250))
    const sheet = cutSheet(table.outline, [piece], { pattern: testPattern(), size: 'one' })
    const fromSides = sheet.pieces[0]!.points!.map(({ from }) => from)
    expect(sheet.edges).not.toBeNull()
    const isUpright = sheet.edges!.map(
      ({ from, to }) => Math.abs(to[0] - from[0]) < Math.abs(to[1] - from[1]),
    )
    const side = fromSides.map((from) => from[isUpright.indexOf(true)]!).sort((a, b) => a - b)
    const left = [190, 590]
    const right = [1400 - 10 - 600, 1400 - 10 - 200]
    expect([left, right]).toContainEqual(side.map((mm) => Math.round(mm)))
  })

  it('with narrow hems and woven edges names each strip once', () => {
    expect(
      onTheTable(
        remnant({ selvedges: true, hemmed: true }),
        panelOf(remnant({ selvedges: true, hemmed: true }), 'cloth'),
      ).takeOff,
    ).toEqual([
      { along: 'selvedge', width: 10 },
      { along: 'hem', width: 15 },
    ])
  })

  it('with raw edges all round is as it is', () => {
    const garment = remnant({ selvedges: false, hemmed: false })
    expect(onTheTable(garment, panelOf(garment, 'cloth')).takeOff).toEqual([])
  })
})

describe('a panel of a garment', () => {
  it('that is cut open loses its hem and its seams', () => {
    const table = onTheTable(tShirt(), panelOf(tShirt(), 'front'))
    expect(table).toMatchObject({ seamLines: false, hemsOn: false })
    expect(table.takeOff).toEqual([
      { along: 'hem', width: 25 },
      { along: 'seam', width: 10 },
    ])
  })

  it('that was unpicked is measured from its seam lines', () => {
    const garment: Garment = { ...tShirt(), opening: 'unpicked' }
    expect(onTheTable(garment, panelOf(garment, 'front'))).toMatchObject({ takeOff: [], seamLines: true })
  })

  it('whose hem a piece takes over keeps it, and its fold is the edge', () => {
    const open = panelOf(tShirt(), 'front')
    const bottom = (panel: { readonly outline: FreePanel['outline'] }) =>
      Math.min(...panel.outline.map(([, y]) => y))
    const atFold = rectangle(200, 0, 100, 200)
    const reservation = testReservation({ pieces: [laid('body', 'front', atFold)] })
    const panel = panelOf(tShirt(), 'front', [reservation])
    const table = onTheTable(tShirt(), panel)
    expect(table.hemsOn).toBe(true)
    expect(table.takeOff).toEqual([{ along: 'seam', width: 10 }])
    expect(bottom(table)).toBeCloseTo(0, 6)
    expect(bottom(open)).toBeCloseTo(25, 6)
  })
})

it('an offcut is as it was cut', () => {
  const garment = remnant({ selvedges: true, hemmed: false })
  const records = { ...none, cuts: [testCut({ panel: 'cloth', offcuts: ['o1'] })], offcuts: [testOffcut()] }
  const panel = clothOf(garment, records).panels.find(({ id }) => id === 'o1')!
  expect(onTheTable(garment, panel)).toMatchObject({
    takeOff: [],
    seamLines: false,
    outline: testOffcut().outline,
  })
})
