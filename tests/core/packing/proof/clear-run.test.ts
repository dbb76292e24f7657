import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ended } from '../../../../src/core/base/slices.ts'
import type { Point, Polygon } from '../../../../src/core/geometry/index.ts'
import { refuteAlone } from '../../../../src/core/packing/proof/alone.ts'
import { longestRun } from '../../../../src/core/packing/proof/clear-run.ts'
import { refuteEarly } from '../../../../src/core/packing/proof/refute.ts'
import { exactWays, makeItem, makeProblem, rectangle } from '../../../support/packing.ts'

/** Columns of whole squares side by side, each with a bottom and a top: a polygon, and what runs it has is plain to see. */
const skylines = fc
  .array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 7 })
  .map((heights) => ({ heights, outline: skyline(heights) }))

function skyline(heights: readonly number[]): Polygon {
  const top = heights.flatMap((height, i): Point[] => [
    [10 * i, 10 * height],
    [10 * (i + 1), 10 * height],
  ])
  const points: Point[] = [[10 * heights.length, 0], ...top.reverse(), [0, 0]]
  return points.filter(
    (p, i) => i === 0 || p[0] !== (points[i - 1] as Point)[0] || p[1] !== (points[i - 1] as Point)[1],
  )
}

describe('the longest clear run', () => {
  it('is that of the best window of columns', () => {
    fc.assert(
      fc.property(skylines, fc.integer({ min: 1, max: 7 }), ({ heights, outline }, columns) => {
        const windows = heights
          .slice(0, Math.max(0, heights.length - columns + 1))
          .map((_, i) => Math.min(...heights.slice(i, i + columns)))
        const best = 10 * Math.max(0, ...windows)
        const region = { id: 'region', outline, forbidden: [] }
        expect(longestRun(region, 10 * columns)).toBeCloseTo(best, 2)
        if (columns === 1) expect(longestRun(region, 0)).toBeCloseTo(10 * Math.max(...heights), 2)
      }),
    )
  })

  it('is cut by a flaw', () => {
    const region = { id: 'region', outline: rectangle(100, 500), forbidden: [flaw(40, 60, 200, 220)] }
    expect(longestRun(region, 0)).toBeCloseTo(500, 2)
    expect(longestRun(region, 39)).toBeCloseTo(500, 2)
    expect(longestRun(region, 41)).toBeCloseTo(280, 2)
  })
})

function flaw(minX: number, maxX: number, minY: number, maxY: number): Polygon {
  return [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ]
}

describe('the lengths in a reason', () => {
  it('are the piece’s own and the longest run: a rectangle as long as the run lies there, one a little longer does not', () => {
    fc.assert(
      fc.property(
        skylines,
        fc.integer({ min: 5, max: 70 }),
        fc.integer({ min: 5, max: 95 }),
        ({ outline }, width, height) => {
          const panel = (h: number) =>
            makeProblem(outline, [makeItem('piece', rectangle(width, h), 1, exactWays([0, 180]))])
          const { along, run, width: asked = 0 } = ended(refuteAlone(panel(height)))?.figures ?? {}
          if (along === undefined || run === undefined || run === 0) return
          expect(along).toBeCloseTo(height, 1)
          const strip = (h: number) =>
            makeProblem(outline, [
              makeItem('strip', rectangle(Math.max(asked - 0.02, 0.02), h), 1, exactWays([0])),
            ])
          expect(refuteEarly(strip(run - 0.05))).toBeNull()
          expect(refuteEarly(strip(run + 0.05))).not.toBeNull()
        },
      ),
      { numRuns: 200 },
    )
  }, 60_000)

  it('tell across from along, and leave alone what can be turned', () => {
    const wide = makeProblem(rectangle(300, 400), [
      makeItem('a', rectangle(350, 100), 1, exactWays([0, 180])),
    ])
    expect(refuteEarly(wide)?.figures).toEqual({ across: 350, run: 300 })
    const turned = makeProblem(rectangle(300, 400), [
      makeItem('a', rectangle(450, 100), 1, exactWays([0, 90, 180, 270])),
    ])
    expect(refuteEarly(turned)?.figures).not.toHaveProperty('run')
  })

  it('tell two pieces that have no room side by side nor one above the other', () => {
    const two = makeProblem(rectangle(380, 700), [
      makeItem('sleeve', rectangle(206, 450), 2, exactWays([0, 180])),
    ])
    const { across, widest, along, longest } = refuteEarly(two)?.figures ?? {}
    expect(across).toBeCloseTo(412, 1)
    expect([widest, longest]).toEqual([380, 700])
    expect(along).toBeCloseTo(900, 1)
  })
})
