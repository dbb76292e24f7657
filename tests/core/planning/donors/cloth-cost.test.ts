import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringsDifference } from '../../../../src/core/geometry/clipper.ts'
import { largestClearRectangle } from '../../../../src/core/planning/donors/clear-rectangle.ts'
import { clothCost } from '../../../../src/core/planning/donors/waste.ts'
import { layProblem, panel, piece, rectangle } from '../../../support/lay-problems.ts'

describe('the largest clear rectangle', () => {
  it('is that of a grid of squares with some taken out of its inside (every rectangle of squares tried)', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 3 })), {
          maxLength: 8,
          selector: ([x, y]) => 7 * y + x,
        }),
        (holes) => {
          const rings = ringsDifference(
            [rectangle(70, 50)],
            holes.map(([x, y]) => rectangle(10, 10, 10 * x, 10 * y)),
          )
          let most = 0
          for (let x = 0; x < 7; x++)
            for (let y = 0; y < 5; y++)
              for (let right = x; right < 7; right++)
                for (let top = y; top < 5; top++)
                  if (!holes.some(([hx, hy]) => hx >= x && hx <= right && hy >= y && hy <= top))
                    most = Math.max(most, (right - x + 1) * (top - y + 1))
          expect(largestClearRectangle(rings)).toBe(100 * most)
        },
      ),
    )
  })

  it('stays inside a slanting edge', () => {
    const triangle = [
      [0, 0],
      [400, 0],
      [0, 400],
    ] as const
    // The largest rectangle in a right triangle takes half of it: 200 by 200 (Euclid, Elements VI.27).
    const found = largestClearRectangle([triangle])
    expect(found).toBeLessThanOrEqual(40_000)
    expect(found).toBeGreaterThan(34_000)
  })
})

describe('what a lay costs in cloth', () => {
  const front = panel(rectangle(400, 400), { id: 'front', flaws: [rectangle(20, 20, 380, 380)] })
  const sleeve = panel(rectangle(100, 100), { id: 'sleeve' })
  const problem = layProblem([front, sleeve], [piece(rectangle(80, 80), { id: 'patch' })])
  const laid = (id: string, x: number) => ({
    verdict: 'fits' as const,
    placements: [{ piece: 'patch', copy: 1, panel: id, turn: 0, mirrored: false, x, y: x }],
    reason: null,
    leftOut: [],
    spare: null,
    spareIs: 'at-least' as const,
    elapsedMs: 0,
  })

  it('wastes what is left of the panels used, flaws not counted', () => {
    expect(clothCost(problem, laid('sleeve', 0)).waste).toBeCloseTo(3600, 3)
    expect(clothCost(problem, laid('front', 0)).waste).toBeCloseTo(160_000 - 400 - 6400, 3)
  })

  it('spoils nothing good on a sleeve, and much in the middle of a front', () => {
    expect(clothCost(problem, laid('sleeve', 0)).spoils).toBe(0)
    expect(clothCost(problem, laid('front', 160)).spoils).toBe(400 * 380 - 400 * 160)
  })
})
