import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringsArea } from '../../../../src/core/geometry/clipper.ts'
import { polygonArea, polygonMoved } from '../../../../src/core/geometry/index.ts'
import { polygonOriented } from '../../../../src/core/geometry/transform.ts'
import type { Point, Polygon } from '../../../../src/core/geometry/types.ts'
import { feasibleDomain, innerFit } from '../../../../src/core/packing/engine/inner-fit.ts'
import { noFit } from '../../../../src/core/packing/engine/no-fit.ts'
import { shrunk } from '../../../../src/core/packing/engine/shrunk.ts'
import { overlapArea, ringsContain, starPolygon, toJsts, uncoveredArea } from '../../../support/planar.ts'

const triangle = [
  [0, 0],
  [2, 0],
  [0, 1],
] as const
const square = (side: number) =>
  [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ] as const
/** Points from their coordinates in a row. */
const paired = (numbers: readonly number[]): Polygon =>
  numbers.flatMap((x, i): Point[] => (i % 2 === 0 ? [[x, numbers[i + 1]!]] : []))

describe('no-fit polygon', () => {
  it('of a triangle and a unit square has the five corners and the area 5 worked out by hand', () => {
    const rings = noFit(triangle, square(1))
    expect(rings).toHaveLength(1)
    expect([...rings[0]!].sort()).toEqual(
      [
        [-1, -1],
        [2, -1],
        [2, 0],
        [0, 1],
        [-1, 1],
      ].sort(),
    )
    expect(ringsArea(rings)).toBe(5)
  })

  it('keeps a real hole, in which the moving item fits, and the mouth that leads to no false one', () => {
    const cup = [
      [0, 0],
      [3, 0],
      [3, 3],
      [0, 3],
      [0, 1.6],
      [1, 1.6],
      [1, 2],
      [2, 2],
      [2, 1],
      [1, 1],
      [1, 1.4],
      [0, 1.4],
    ] as const
    const rings = noFit(cup, square(0.5))
    expect(rings).toHaveLength(2)
    expect(Math.min(...rings.map(polygonArea))).toBeCloseTo(-0.25, 6)
  })

  it('agrees with a reference library on whether the interiors meet (JTS, through jsts)', () => {
    fc.assert(
      fc.property(
        starPolygon(9, 100),
        starPolygon(7, 60),
        fc.array(
          fc.tuple(
            fc.double({ min: -170, max: 170, noNaN: true }),
            fc.double({ min: -170, max: 170, noNaN: true }),
          ),
          {
            minLength: 12,
            maxLength: 12,
          },
        ),
        (a, b, positions) => {
          const rings = noFit(a, b)
          for (const [x, y] of positions) {
            const area = overlapArea(toJsts(a), toJsts(polygonMoved(b, x, y)))
            if (area > 0.05) expect(ringsContain(rings, [x, y])).toBe(true)
            if (ringsContain(rings, [x, y])) expect(area).toBeGreaterThan(0)
          }
        },
      ),
      { numRuns: 60, seed: 1 },
    )
  })
})

describe('inner-fit region', () => {
  it('of a triangle in a 3 by 2 rectangle is the unit square', () => {
    const rings = innerFit(
      [
        [0, 0],
        [3, 0],
        [3, 2],
        [0, 2],
      ],
      triangle,
    )
    expect(rings).toHaveLength(1)
    expect(ringsArea(rings)).toBe(1)
  })

  it('is empty when the item surrounds the container', () => {
    expect(innerFit(square(1), polygonMoved(square(3), -1, -1))).toEqual([])
  })

  it('leaves a ring of 0.002 mm for a square shrunk by 0.001 in a 3 by 3 square round a hole', () => {
    const hole = polygonMoved(square(1), 1, 1)
    const item = polygonMoved(square(0.998), 0.001, 0.001)
    expect(feasibleDomain(square(3), [hole], square(1))).toEqual([])
    const area = ringsArea(feasibleDomain(square(3), [hole], item))
    expect(area).toBeGreaterThan(0.0157)
    expect(area).toBeLessThan(0.0163)
  })

  it('has no sliver that reaches too far where an outline all but slides along its container', () => {
    // A yoke cut into a panel of the same shape, drawn in by 9 mm; coordinates to a thousandth, as in problem files.
    const yoke = [17.718, 25, 180.451, 25, 185.488, 41.577, 185.07, 41.673, 165.621, 50.357, 148.539, 62.728]
    const top = [
      141.583, 70.343, 128.421, 82.125, 113.687, 90.613, 99.085, 95.463, 84.482, 90.613, 69.749, 82.125,
    ]
    const side = [56.586, 70.343, 49.63, 62.728, 32.548, 50.357, 13.099, 41.673, 12.681, 41.577]
    const bottom = [
      -157.048, -5.582, -159.701, -14.312, -143.412, -21.585, -125.496, -34.561, -118.364, -42.367,
    ]
    const middle = [-105.777, -53.635, -91.934, -61.61, -79.388, -65.776, -66.843, -61.61, -52.999, -53.634]
    const end = [-40.412, -42.367, -33.281, -34.561, -15.364, -21.585, 0.924, -14.312, -1.728, -5.582]
    const container = paired([...yoke, ...top, ...side])
    const item = polygonOriented(shrunk(paired([...bottom, ...middle, ...end]), 0.0015), {
      turn: 180,
      mirrored: false,
    })
    const positions = innerFit(container, item).flat()
    expect(positions.length).toBeGreaterThan(10)
    for (const [x, y] of positions)
      expect(uncoveredArea(toJsts(polygonMoved(item, x, y)), toJsts(container))).toBeLessThan(0.1)
  })

  it('agrees with a reference library on whether anything sticks out (JTS, through jsts)', () => {
    fc.assert(
      fc.property(
        starPolygon(11, 100),
        starPolygon(6, 30),
        fc.array(
          fc.tuple(
            fc.double({ min: -80, max: 80, noNaN: true }),
            fc.double({ min: -80, max: 80, noNaN: true }),
          ),
          {
            minLength: 12,
            maxLength: 12,
          },
        ),
        (container, item, positions) => {
          const rings = innerFit(container, item)
          for (const [x, y] of positions) {
            const outside = uncoveredArea(toJsts(polygonMoved(item, x, y)), toJsts(container))
            if (outside > 0.05) expect(ringsContain(rings, [x, y])).toBe(false)
            if (!ringsContain(rings, [x, y])) expect(outside).toBeGreaterThan(0)
          }
        },
      ),
      { numRuns: 60, seed: 1 },
    )
  })
})
