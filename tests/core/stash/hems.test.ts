import { describe, expect, it } from 'vitest'
import { polygonArea } from '../../../src/core/geometry/index.ts'
import { clothOf, type FreePanel } from '../../../src/core/stash/cloth-of.ts'
import { cutApart } from '../../../src/core/stash/cut-apart.ts'
import { groundOf } from '../../../src/core/stash/ground.ts'
import { reservationFaults } from '../../../src/core/stash/reservation-faults.ts'
import { measuredCloth } from '../../support/check-questions.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { aReservation, laidAt, records } from '../../support/stash.ts'

/** A scarf of 300 × 215 with narrow hems of 15 all round. */
const scarf = (opening: 'cut' | 'unpicked') => ({
  ...measuredCloth(300, 215, { hemmed: true }),
  id: 'cloth',
  opening,
})

const onHem = laidAt('front', rectangle(200, 100, 15, 0), { panel: 'cloth' })
const panelOf = (opening: 'cut' | 'unpicked') => clothOf(scarf(opening), records()).panels[0] as FreePanel

describe('a piece that takes a hem over', () => {
  it('has the cloth turned up behind the hem with it', () => {
    const ground = groundOf(onHem.outline, panelOf('unpicked').hemmed)
    expect(ground.map((part) => Math.abs(polygonArea(part)))).toEqual([20_000, 200 * 15])
    expect(ground[1]!.every(([, y]) => y <= 0 && y >= -15)).toBe(true)
    expect(groundOf(rectangle(100, 100, 50, 50), panelOf('unpicked').hemmed)).toHaveLength(1)
  })

  it('holds whether the rest of the hem is cut off or let down', () => {
    for (const opening of ['cut', 'unpicked'] as const) {
      const cloth = clothOf(scarf(opening), records())
      expect(reservationFaults(aReservation('r1', [onHem]), cloth)).toEqual([])
    }
  })

  it('is in the way of whoever wants the let-down hem', () => {
    const below = aReservation('r2', [laidAt('tie', rectangle(100, 10, 50, -12), { panel: 'cloth' })])
    const cloth = clothOf(scarf('unpicked'), records({ reservations: [aReservation('r1', [onHem])] }))
    expect(reservationFaults(below, cloth)).toMatchObject([{ kind: 'taken', by: { piece: 'front' } }])
    expect(reservationFaults(below, clothOf(scarf('unpicked'), records()))).toEqual([])
  })

  it('leaves no offcut of the hem that goes with it', () => {
    const panel = panelOf('unpicked')
    const reservations = [aReservation('r1', [onHem])]
    const { offcuts } = cutApart({ panel, reservation: 'r1', pieces: [onHem], reservations, sliver: 5 })
    const left = offcuts.reduce((sum, { outline }) => sum + Math.abs(polygonArea(outline)), 0)
    // Let down, each side is 15 longer; the corners stay away.
    expect(left).toBeCloseTo(330 * 245 - 4 * 15 * 15 - 200 * 115, 0)
  })

  it('is recorded on the panel with its hems left on, and its offcuts have none', () => {
    const panel = panelOf('cut')
    const reservations = [aReservation('r1', [onHem])]
    const apart = cutApart({ panel, reservation: 'r1', pieces: [onHem], reservations, sliver: 5 })
    expect(Math.abs(polygonArea(apart.outline))).toBeCloseTo(300 * 215)
    const left = apart.offcuts.reduce((sum, { outline }) => sum + Math.abs(polygonArea(outline)), 0)
    expect(left).toBeCloseTo(270 * 185 - 200 * 85, 0)
  })
})
