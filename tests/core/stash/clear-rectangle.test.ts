import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clearRectangle, looksUsedUp } from '../../../src/core/stash/clear-rectangle.ts'
import { clothOf, type FreePanel } from '../../../src/core/stash/cloth-of.ts'
import { hasClearRectangle } from '../../../src/core/stash/free-cloth.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { overlapArea, starPolygon, toJsts, uncoveredArea } from '../../support/planar.ts'
import { aCloth, aReservation, laidAt, records } from '../../support/stash.ts'

const panelOf = (...parameters: Parameters<typeof clothOf>) => clothOf(...parameters).panels[0] as FreePanel
const area = (box: { minX: number; maxX: number; minY: number; maxY: number }) =>
  (box.maxX - box.minX) * (box.maxY - box.minY)

describe('the clear rectangle of a panel', () => {
  it('is the whole of a free rectangle of cloth', () => {
    const box = clearRectangle(panelOf(aCloth(), records()))
    expect(box).toEqual({
      minX: expect.closeTo(0, 3),
      minY: expect.closeTo(0, 3),
      maxX: expect.closeTo(600, 3),
      maxY: expect.closeTo(400, 3),
    })
  })

  it('lies beside what is reserved, and is none where all of it is', () => {
    const half = aReservation('r1', [laidAt('a', rectangle(600, 150))])
    expect(area(clearRectangle(panelOf(aCloth(), records({ reservations: [half] })))!)).toBeCloseTo(
      600 * 250,
      0,
    )
    const all = aReservation('r1', [laidAt('a', rectangle(600, 400))])
    expect(clearRectangle(panelOf(aCloth(), records({ reservations: [all] })))).toBeNull()
  })

  it('is not narrower than asked', () => {
    // Free are a long strip of 600 × 100 and, left of what is reserved, 120 × 400.
    const reserved = aReservation('r1', [laidAt('a', rectangle(480, 300, 120, 0))])
    const panel = panelOf(aCloth(), records({ reservations: [reserved] }))
    expect(area(clearRectangle(panel)!)).toBeCloseTo(600 * 100, 0)
    expect(area(clearRectangle(panel, 110)!)).toBeCloseTo(120 * 400, 0)
    expect(clearRectangle(panel, 125)).toBeNull()
  })

  it('is truly clear, and large: a tenth more either way finds no place that much larger', () => {
    const spots = fc.array(
      fc.tuple(fc.integer({ min: -250, max: 250 }), fc.integer({ min: -250, max: 250 })),
      { maxLength: 5 },
    )
    fc.assert(
      fc.property(starPolygon(14, 300), spots, (outline, places) => {
        const reserved = aReservation(
          'r1',
          places.map(([x, y], i) => laidAt(`p${i}`, rectangle(60, 40, x, y))),
        )
        const cloth = clothOf(aCloth({ outline }), records({ reservations: [reserved] }))
        const box = clearRectangle(cloth.panels[0]!)
        if (!box) return
        const [width, height] = [box.maxX - box.minX, box.maxY - box.minY]
        const shape = toJsts(rectangle(width, height, box.minX, box.minY))
        expect(uncoveredArea(shape, toJsts(outline))).toBeLessThan(0.1)
        for (const { outline: place } of reserved.pieces)
          expect(overlapArea(shape, toJsts(place))).toBeLessThan(0.1)
        expect(hasClearRectangle(cloth, width, height)).toBe(true)
        expect(hasClearRectangle(cloth, width * 1.1, height * 1.1)).toBe(false)
      }),
      { numRuns: 100 },
    )
  })
})

describe('a garment', () => {
  it('looks used up when no rectangle of the size asked is left, whichever way it lies', () => {
    const reserved = aReservation('r1', [laidAt('a', rectangle(600, 300))])
    const cloth = clothOf(aCloth(), records({ reservations: [reserved] }))
    expect(looksUsedUp(cloth, 100, 500)).toBe(false)
    expect(looksUsedUp(cloth, 150, 150)).toBe(true)
  })
})
