import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ringsArea } from '../../../../src/core/geometry/clipper.ts'
import { polygonArea, polygonMoved } from '../../../../src/core/geometry/index.ts'
import { feasibleDomain, innerFit } from '../../../../src/core/packing/engine/inner-fit.ts'
import { noFit } from '../../../../src/core/packing/engine/no-fit.ts'
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
