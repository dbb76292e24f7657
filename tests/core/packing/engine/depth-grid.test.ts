import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DepthGrid } from '../../../../src/core/packing/engine/depth-grid.ts'
import { flatDepth, flatRings } from '../../../../src/core/packing/engine/flat-rings.ts'
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
          for (const [x, y] of positions)
            expect(grid.depth(160 * x, 160 * y)).toBe(flatDepth(flat, 160 * x, 160 * y))
        },
      ),
      { numRuns: 60, seed: 1 },
    )
  })
})
