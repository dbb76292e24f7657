import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import type { FreePanel } from '../../../src/core/stash/cloth-of.ts'
import { freeArea, hasClearRectangle } from '../../../src/core/stash/free-cloth.ts'

const box = (x: number, y: number, width: number, height: number): Polygon => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

function cloth(outline: Polygon, flaws: readonly Polygon[] = [], reserved: readonly Polygon[] = []) {
  const place = { reservation: 'r', project: 'p', piece: 'q', copy: 1, panel: 'cloth' }
  const panel: FreePanel = {
    id: 'cloth',
    from: 'garment',
    outline,
    edges: null,
    flaws,
    reserved: reserved.map((one) => ({ ...place, outline: one })),
    hemmed: null,
  }
  return { panels: [panel], cuts: [] }
}

describe('the free cloth of a garment', () => {
  it('is what neither flaws nor reservations take, counted once where they overlap', () => {
    const [flaw, place] = [box(0, 0, 100, 100), box(50, 0, 100, 100)]
    expect(freeArea(cloth(box(0, 0, 400, 300), [flaw], [place]))).toBeCloseTo(400 * 300 - 150 * 100, 0)
  })

  it('may be a rectangle of just the size asked, and none larger', () => {
    const whole = cloth(box(0, 0, 400, 300))
    expect(hasClearRectangle(whole, 400, 300)).toBe(true)
    expect(hasClearRectangle(whole, 402, 300)).toBe(false)
    expect(hasClearRectangle(whole, 300, 400)).toBe(false)
  })

  it('has no rectangle across a reserved place', () => {
    const parted = cloth(box(0, 0, 400, 300), [], [box(0, 140, 400, 20)])
    expect(hasClearRectangle(parted, 400, 140)).toBe(true)
    expect(hasClearRectangle(parted, 100, 150)).toBe(false)
  })

  it('agrees with squared paper, square by square', () => {
    // Cloth of 6 × 5 squares of 20 mm, some of them spoilt.
    const spoilt = fc.uniqueArray(fc.integer({ min: 0, max: 29 }), { maxLength: 8 })
    const side = fc.integer({ min: 1, max: 6 })
    fc.assert(
      fc.property(spoilt, side, side, (squares, wide, high) => {
        const flaws = squares.map((k) => box((k % 6) * 20, Math.floor(k / 6) * 20, 20, 20))
        const told = hasClearRectangle(cloth(box(0, 0, 120, 100), flaws), wide * 20, high * 20)
        expect(told).toBe(fitsOnSquares(squares, wide, high))
      }),
    )
  })
})

/** True if some wide × high block of squares is free. Spoilt squares lie on the grid, so blocks off it gain nothing. */
function fitsOnSquares(spoilt: readonly number[], wide: number, high: number): boolean {
  for (let x = 0; x + wide <= 6; x++) {
    for (let y = 0; y + high <= 5; y++) {
      const free = Array.from({ length: wide * high }, (_, k) => {
        return !spoilt.includes((y + Math.floor(k / wide)) * 6 + x + (k % wide))
      })
      if (free.every(Boolean)) return true
    }
  }
  return false
}
