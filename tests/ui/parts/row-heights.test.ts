import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { RowHeights, rowsBetween } from '../../../src/ui/parts/row-heights.ts'

describe('the heights of rows', () => {
  it('are a guess, then what was measured, and of others the average of these', () => {
    const heights = new RowHeights(100)
    expect([...heights.starts(['a', 'b'])]).toEqual([0, 100, 200])
    expect(heights.note('a', 60)).toBe(-40)
    expect([...heights.starts(['a', 'b'])]).toEqual([0, 60, 120])
    expect(heights.note('b', 80)).toBe(20)
    expect(heights.note('a', 64)).toBe(4)
    expect([...heights.starts(['b', 'c', 'a'])]).toEqual([0, 80, 152, 216])
  })
})

describe('the rows between two heights', () => {
  it('are all that are seen there, and so many more on either side as there are', () => {
    const rows = fc.array(fc.integer({ min: 1, max: 300 }), { maxLength: 60 })
    const figures = [
      fc.integer({ min: -500, max: 9000 }),
      fc.integer({ min: 0, max: 900 }),
      fc.nat(5),
    ] as const
    fc.assert(
      fc.property(rows, ...figures, (sizes, top, screen, beyond) => {
        const heights = new RowHeights(1)
        const keys = sizes.map((size, k) => {
          heights.note(String(k), size)
          return String(k)
        })
        const starts = heights.starts(keys)
        const [from, to] = rowsBetween(starts, top, top + screen, beyond)
        expect(from).toBeGreaterThanOrEqual(0)
        expect(to).toBeLessThanOrEqual(keys.length)
        const seen = keys.flatMap((_, k) => {
          const [start, end] = [starts[k] as number, starts[k + 1] as number]
          return start <= top + screen && end > top ? [k] : []
        })
        for (const k of seen) {
          expect(from).toBeLessThanOrEqual(Math.max(0, k - beyond))
          expect(to).toBeGreaterThanOrEqual(Math.min(keys.length, k + 1 + beyond))
        }
        // No more than that: a long list is drawn in part.
        expect(to - from).toBeLessThanOrEqual(seen.length + 2 * beyond + 1)
      }),
    )
  })
})
