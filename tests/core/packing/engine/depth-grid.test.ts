import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CLEAR, DepthGrid } from '../../../../src/core/packing/engine/depth-grid.ts'
import { flatDepth, flatNearest, flatRings } from '../../../../src/core/packing/engine/flat-rings.ts'
import { noFit } from '../../../../src/core/packing/engine/no-fit.ts'
import { starPolygon } from '../../../support/planar.ts'

describe('depth grid', () => {
  it('gives the depth that all edges together give', () => {
    const position = fc.tuple(
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
    )
    fc.assert(
      fc.property(
        starPolygon(12, 100),
        starPolygon(9, 60),
        fc.array(position, { minLength: 50, maxLength: 50 }),
        (a, b, positions) => {
          const flat = flatRings(noFit(a, b))
          const grid = new DepthGrid(flat)
          for (const [x, y] of positions.map(([px, py]) => [160 * px, 160 * py] as const)) {
            const depth = flatDepth(flat, x, y)
            expect(grid.depth(x, y)).toBe(depth)
            const cell = grid.cell(x, y)
            if (cell === CLEAR) expect(depth).toBe(0)
            else expect(grid.floor(cell)).toBeLessThanOrEqual(depth)
          }
        },
      ),
      { numRuns: 60, seed: 1 },
    )
  })

  it('gives the way out that all edges together give', () => {
    const blank = () => ({ x: 0, y: 0, dx: 0, dy: 0 })
    const position = fc.tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 }))
    fc.assert(
      fc.property(starPolygon(12, 100), fc.array(position, { minLength: 30 }), (outline, positions) => {
        const flat = flatRings([outline])
        const grid = new DepthGrid(flat)
        for (const [x, y] of positions) {
          const [found, expected] = [blank(), blank()]
          if (grid.wayOut(x, y, found) === 0) continue
          flatNearest(flat, x, y, expected)
          expect(found).toEqual(expected)
        }
      }),
      { numRuns: 40, seed: 1 },
    )
  })
})
