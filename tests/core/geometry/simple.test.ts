import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { edgesThatMeet, polygonIsSimple } from '../../../src/core/geometry/simple.ts'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { starPolygon } from '../../support/planar.ts'

const SQUARE: Polygon = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]

describe('polygonIsSimple', () => {
  it('accepts a square wound either way', () => {
    expect(polygonIsSimple(SQUARE)).toBe(true)
    expect(polygonIsSimple([...SQUARE].reverse())).toBe(true)
  })

  it.each<[string, Polygon]>([
    [
      'two points',
      [
        [0, 0],
        [1, 0],
      ],
    ],
    [
      'a bow tie',
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
    ],
    [
      'a repeated point',
      [
        [0, 0],
        [10, 0],
        [10, 0],
        [0, 10],
      ],
    ],
    ['a repeated first point', [...SQUARE, [0, 0]]],
    [
      'a spike that runs back',
      [
        [0, 0],
        [10, 0],
        [20, 0],
        [10, 0],
        [0, 10],
      ],
    ],
    [
      'a corner on another edge',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ],
    ],
    [
      'two corners in one place',
      [
        [0, 0],
        [5, 5],
        [10, 0],
        [10, 10],
        [5, 5],
        [0, 10],
      ],
    ],
  ])('refuses %s', (_, polygon) => {
    expect(polygonIsSimple(polygon)).toBe(false)
  })

  it('sees what comparing every edge with every other does', () => {
    // A coarse lattice: corners on edges, edges over edges and repeated points are common.
    const coordinate = fc.integer({ min: 0, max: 6 })
    const lattice = fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 8 })
    fc.assert(
      fc.property(fc.oneof(lattice, starPolygon(30, 300)), (polygon) => {
        expect(polygonIsSimple(polygon)).toBe(edgesThatMeet(polygon) === null)
      }),
      { numRuns: 2000 },
    )
  })
})
