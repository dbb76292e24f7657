import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { polygonMoved, polygonPerimeter } from '../../../src/core/geometry/index.ts'
import { clothOf } from '../../../src/core/stash/cloth-of.ts'
import { HELD_WITHIN, outlinesOverlap, overlapsOf } from '../../../src/core/stash/overlaps.ts'
import { reservationFaults } from '../../../src/core/stash/reservation-faults.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { overlapArea, starPolygon, toJsts } from '../../support/planar.ts'
import { aCloth, aReservation, laidAt, records } from '../../support/stash.ts'
import { testCut, testOffcut } from '../../support/two-devices.ts'

describe('two outlines', () => {
  it('overlap if they share area by the reference library, beyond what a checked lay may err', () => {
    const star = starPolygon(8, 60)
    const offset = fc.integer({ min: -1200, max: 1200 }).map((tenths) => tenths / 10)
    fc.assert(
      fc.property(star, star, offset, offset, (a, b, x, y) => {
        const moved = polygonMoved(b, x, y)
        const shared = overlapArea(toJsts(a), toJsts(moved))
        if (outlinesOverlap(a, moved)) expect(shared).toBeGreaterThan(0)
        else expect(shared).toBeLessThanOrEqual(2 * HELD_WITHIN * polygonPerimeter(a))
      }),
      { numRuns: 1000 },
    )
  })

  it('that touch, or overlap by the rounding of a lay, do not overlap; those one millimetre deep do', () => {
    expect(outlinesOverlap(rectangle(100, 100), rectangle(100, 100, 100))).toBe(false)
    expect(outlinesOverlap(rectangle(100, 100), rectangle(100, 100, 99.99))).toBe(false)
    expect(outlinesOverlap(rectangle(100, 100), rectangle(100, 100, 99))).toBe(true)
    expect(outlinesOverlap(rectangle(100, 100), rectangle(10, 10, 40, 40))).toBe(true)
    expect(outlinesOverlap(rectangle(100, 100), rectangle(100, 100))).toBe(true)
  })
})

describe('the overlaps of reservations', () => {
  const first = aReservation('r1', [laidAt('a', rectangle(100, 100))])
  const over = [laidAt('b', rectangle(100, 100, 50, 50))]

  it('are found on one panel of one garment only', () => {
    const second = aReservation('r2', over)
    expect(overlapsOf([first, second])).toMatchObject([
      { first: { reservation: 'r1', piece: 'a' }, second: { reservation: 'r2', piece: 'b' } },
    ])
    const otherPanel = aReservation('r2', [{ ...over[0]!, panel: 'sleeve' }])
    expect(overlapsOf([first, otherPanel, { ...second, garment: 'shirt' }])).toEqual([])
  })
})

describe('a reservation', () => {
  const reservation = aReservation('r1', [
    laidAt('a', rectangle(200, 100)),
    laidAt('b', rectangle(100, 100, 200, 0)),
  ])
  const faults = (cloth: ReturnType<typeof clothOf>, of = reservation) =>
    reservationFaults(of, cloth).map(({ kind, piece }) => `${piece} ${kind}`)

  it('holds on its own cloth, beside others, and over the record of itself', () => {
    const other = aReservation('r2', [laidAt('c', rectangle(300, 100, 0, 100))])
    expect(faults(clothOf(aCloth(), records()))).toEqual([])
    expect(faults(clothOf(aCloth(), records({ reservations: [other, reservation] })))).toEqual([])
  })

  it('names the pieces that stick out when the cloth is measured smaller', () => {
    expect(faults(clothOf(aCloth({ outline: rectangle(250, 400) }), records()))).toEqual(['b outside'])
  })

  it('names the pieces that lie on a flaw marked since', () => {
    const shape = { form: 'round', centre: [50, 50], radius: 10 } as const
    const stained = aCloth({ flaws: [{ id: 'f', panel: 'outline', kind: 'stain', shape }] })
    expect(faults(clothOf(stained, records()))).toEqual(['a flaw'])
  })

  it('names the piece and project that has the place', () => {
    const other = aReservation('r2', [laidAt('c', rectangle(50, 50, 150, 50))], 'blouse')
    const cloth = clothOf(aCloth(), records({ reservations: [other] }))
    expect(reservationFaults(reservation, cloth)).toMatchObject([
      {
        piece: 'a',
        copy: 1,
        panel: 'outline',
        kind: 'taken',
        by: { project: 'blouse', piece: 'c', reservation: 'r2' },
      },
    ])
  })

  it('cannot have two pieces at one place itself', () => {
    const twice = aReservation('r1', [
      laidAt('a', rectangle(200, 100)),
      laidAt('b', rectangle(200, 100, 100, 50)),
    ])
    expect(reservationFaults(twice, clothOf(aCloth(), records()))).toMatchObject([
      { piece: 'b', kind: 'taken', by: { piece: 'a', reservation: 'r1' } },
    ])
  })

  it('is nowhere once its panel was cut or its offcut thrown away', () => {
    const cut = testCut({ garment: 'cloth', panel: 'outline', offcuts: ['o1'] })
    const offcut = testOffcut({ garment: 'cloth', outline: rectangle(600, 300) })
    const clothAfter = (kept: boolean) =>
      clothOf(aCloth(), records({ cuts: [cut], offcuts: [{ ...offcut, kept }] }))
    expect(faults(clothAfter(true))).toEqual(['a panel-gone', 'b panel-gone'])
    const moved = aReservation(
      'r1',
      reservation.pieces.map((laid) => ({ ...laid, panel: 'o1' })),
    )
    expect(faults(clothAfter(true), moved)).toEqual([])
    expect(faults(clothAfter(false), moved)).toEqual(['a panel-gone', 'b panel-gone'])
  })
})

describe('the cloth of a garment', () => {
  it('is its panels and offcuts less what was cut of both, with their flaws and reservations', () => {
    const cuts = [
      testCut({ id: 'c1', garment: 'cloth', panel: 'outline', offcuts: ['o1', 'o2'] }),
      testCut({ id: 'c2', garment: 'cloth', panel: 'o1', offcuts: ['o3'] }),
    ]
    const hole = rectangle(10, 10, 5, 5)
    const offcuts = ['o1', 'o2', 'o3'].map((id) => testOffcut({ id, garment: 'cloth', flaws: [hole] }))
    const shape = { form: 'round', centre: [50, 250], radius: 10 } as const
    const garment = aCloth({ flaws: [{ id: 'f', panel: 'o3', kind: 'hole', shape }] })
    const reserved = aReservation('r1', [laidAt('a', rectangle(50, 50, 0, 300), { panel: 'o2' })])
    const cloth = clothOf(garment, records({ cuts, offcuts, reservations: [reserved] }))
    expect(
      cloth.panels.map(({ id, from, flaws, reserved: places }) => [id, from, flaws.length, places.length]),
    ).toEqual([
      ['o2', 'offcut', 1, 1],
      ['o3', 'offcut', 2, 0],
    ])
    expect(cloth.cuts).toHaveLength(2)
    expect(clothOf(aCloth({ id: 'another' }), records({ cuts, offcuts })).panels).toHaveLength(1)
  })
})
