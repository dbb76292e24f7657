import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringsArea, ringsUnion } from '../../../src/core/geometry/clipper.ts'
import { convexSum } from '../../../src/core/geometry/convex.ts'
import { type Point, type Polygon, polygonArea } from '../../../src/core/geometry/index.ts'
import { minkowskiErosion, minkowskiSum } from '../../../src/core/geometry/minkowski.ts'
import { withoutSpikes } from '../../../src/core/geometry/spikes.ts'
import { convexParts } from '../../support/convex-parts.ts'

/** Steps of a staircase: level and upright edges on a coarse grid, so that edges of two of them often run together. */
const staircase: fc.Arbitrary<Polygon> = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 6 })), {
    minLength: 2,
    maxLength: 6,
  })
  .map((steps) => {
    const ring: Point[] = [[0, 0]]
    let x = 0
    for (const [width, height] of steps) {
      ring.push([x, 10 * height])
      x += 10 * width
      ring.push([x, 10 * height])
    }
    const points: Point[] = [...ring.slice(1), [x, 0], [0, 0]]
    const distinct = points.filter(
      ([px, py], i) => px !== points.at(i - 1)![0] || py !== points.at(i - 1)![1],
    )
    return distinct.reverse()
  })

describe('outlines with level and upright edges that run together', () => {
  it('have the Minkowski sum of their convex parts', () => {
    fc.assert(
      fc.property(staircase, staircase, (a, b) => {
        const others = convexParts(b)
        const reference = ringsUnion(
          convexParts(a).flatMap((part) => others.map((other) => convexSum(part, other))),
        )
        expect(ringsArea(minkowskiSum(a, b))).toBeCloseTo(ringsArea(reference), 0)
      }),
      { numRuns: 200, seed: 1 },
    )
  })

  it('are eroded to at most what their boxes leave, and by a point-like square to nearly themselves', () => {
    fc.assert(
      fc.property(staircase, (a) => {
        const side = 0.01
        const dot: Polygon = [
          [0, 0],
          [side, 0],
          [side, side],
          [0, side],
        ]
        const perimeter = 400
        const lost = polygonArea(a) - ringsArea(minkowskiErosion(a, dot))
        expect(lost).toBeGreaterThan(0)
        expect(lost).toBeLessThan(side * perimeter)
      }),
      { numRuns: 200, seed: 1 },
    )
  })
})

describe('a path that turns back on itself', () => {
  const at = (x: number, y: number) => ({ x, y })

  it('loses what it retraces and nothing else', () => {
    const path = [at(0, 0), at(50, 0), at(90, 0), at(40, 0), at(40, 40)]
    expect(withoutSpikes(path, 0)).toEqual([at(0, 0), at(40, 0), at(40, 40)])
  })

  it('loses a spike with a blunt tip of a grid unit, and keeps a sliver wider than the width', () => {
    const spiked = [at(0, 0), at(100, 0), at(1000, 1), at(1000, 2), at(100, 3), at(100, 100), at(0, 100)]
    expect(withoutSpikes(spiked, 3).every(({ x }) => x <= 100)).toBe(true)
    const sliver = [at(0, 0), at(10_000, 0), at(10_000, 30), at(0, 30)]
    expect(withoutSpikes(sliver, 3)).toEqual(sliver)
  })

  it('is nothing if it only goes there and back', () => {
    expect(withoutSpikes([at(0, 0), at(10, 0), at(20, 0), at(5, 0)], 0)).toEqual([])
  })
})
