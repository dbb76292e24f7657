import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { boxOf } from '../../../src/ui/drawing/paths.ts'
import { flow } from '../../../src/ui/state/flow.ts'

const rectangle = fc
  .tuple(
    fc.integer({ min: -300, max: 300 }),
    fc.integer({ min: 5, max: 900 }),
    fc.integer({ min: 5, max: 900 }),
  )
  .map(
    ([at, width, height]): Polygon => [
      [at, at],
      [at + width, at],
      [at + width, at + height],
      [at, at + height],
    ],
  )

describe('pieces set out beside one another', () => {
  it('keep their shape, keep apart, and lie in the box', () => {
    fc.assert(
      fc.property(
        fc.array(rectangle, { minLength: 1, maxLength: 12 }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (outlines, aspect) => {
          const set = flow(outlines, aspect)
          const boxes = set.outlines.map((outline) => boxOf([outline]))
          boxes.forEach((a, i) => {
            const before = boxOf([outlines[i] as Polygon])
            expect(a.maxX - a.minX).toBeCloseTo(before.maxX - before.minX, 6)
            expect(a.maxY - a.minY).toBeCloseTo(before.maxY - before.minY, 6)
            expect(a.minX >= set.box.minX && a.maxX <= set.box.maxX).toBe(true)
            expect(a.minY >= set.box.minY && a.maxY <= set.box.maxY).toBe(true)
            for (const b of boxes.slice(i + 1)) {
              const apart = a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY
              expect(apart).toBe(true)
            }
          })
        },
      ),
    )
  })

  it('fill a wide room side by side and a tall one above each other', () => {
    const squares = [0, 1].map(
      (): Polygon => [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
    )
    const wide = flow(squares, 2).box
    const tall = flow(squares, 0.5).box
    expect(wide.maxX - wide.minX).toBeGreaterThan(wide.maxY - wide.minY)
    expect(tall.maxX - tall.minX).toBeLessThan(tall.maxY - tall.minY)
  })

  it('nothing gives an empty box', () => {
    expect(flow([], 1)).toEqual({ outlines: [], box: { minX: 0, minY: 0, maxX: 0, maxY: 0 } })
  })
})
