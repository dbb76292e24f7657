import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CLEAR } from '../../../../src/core/packing/engine/depth-grid-filler.ts'
import { DepthMemory } from '../../../../src/core/packing/engine/depth-memory.ts'
import {
  type FlatRings,
  flatContains,
  flatDistance2,
  flatNearest,
  flatRings,
} from '../../../../src/core/packing/engine/flat-rings.ts'
import { noFit } from '../../../../src/core/packing/engine/no-fit.ts'
import { starPolygon } from '../../../support/planar.ts'

/** The depth by all edges at once. */
function flatDepth(flat: FlatRings, x: number, y: number): number {
  return flatContains(flat, x, y) ? Math.sqrt(flatDistance2(flat, x, y)) : 0
}

/** A memory that knows the polygon by the handle: with a grid of one cell or a fine one, and others kept before and after. */
function memoryOf(flat: FlatRings, fine: boolean): { memory: DepthMemory; handle: number } {
  const memory = new DepthMemory()
  const square = flatRings([
    [
      [0, 0],
      [5, 0],
      [5, 5],
      [0, 5],
    ],
  ])
  memory.refine(memory.keep(square))
  const handle = memory.keep(flat)
  if (fine) memory.refine(handle)
  memory.keep(square)
  return { memory, handle }
}

describe.each([
  ['one cell', false],
  ['many cells', true],
])('a memory of depths, with a grid of %s', (_, fine) => {
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
          const { memory, handle } = memoryOf(flat, fine)
          for (const [x, y] of positions.map(([px, py]) => [160 * px, 160 * py] as const)) {
            const depth = flatDepth(flat, x, y)
            expect(memory.depth(handle, x, y)).toBe(depth)
            const cell = memory.cell(handle, x, y)
            if (cell === CLEAR) expect(depth).toBe(0)
            else expect(memory.floor(handle, cell)).toBeLessThanOrEqual(depth)
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
        const { memory, handle } = memoryOf(flat, fine)
        for (const [x, y] of positions) {
          const [found, expected] = [blank(), blank()]
          if (memory.wayOut(handle, x, y, found) === 0) continue
          flatNearest(flat, x, y, expected)
          expect(found).toEqual(expected)
        }
      }),
      { numRuns: 40, seed: 1 },
    )
  })
})
