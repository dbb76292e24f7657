import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flawOutlines, orphanedFlaws, shapeOutlines } from '../../../src/core/garments/flaws.ts'
import type { FlawShape, Garment, MarkedFlaw } from '../../../src/core/garments/garment.ts'
import { panelsOf } from '../../../src/core/garments/panels-of.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { pointInPolygon, polygonArea } from '../../../src/core/geometry/polygon.ts'
import type { Point } from '../../../src/core/geometry/types.ts'
import { distanceToSegment } from '../../support/garments.ts'

const coordinate = fc.integer({ min: 0, max: 600 })
const point = fc.tuple(coordinate, coordinate)
const covered = (p: Point, shape: FlawShape) =>
  shapeOutlines(shape).some((area) => pointInPolygon(p, area) >= 0)

const mark = (panel: string, shape: FlawShape): MarkedFlaw => ({ id: 'f', panel, kind: 'hole', shape })
const HOLE: FlawShape = { form: 'round', centre: [200, 200], radius: 20 }

describe('the area of a marked flaw', () => {
  it('covers a circle and at most 2 % more radius', () => {
    fc.assert(
      fc.property(
        point,
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (centre, radius, angle) => {
          const shape: FlawShape = { form: 'round', centre, radius }
          const at = (r: number): Point => [centre[0] + r * Math.cos(angle), centre[1] + r * Math.sin(angle)]
          expect(covered(at(radius * 0.999999), shape)).toBe(true)
          expect(covered(at(radius * 1.021), shape)).toBe(false)
        },
      ),
    )
  })

  it('covers a box from any two opposite corners', () => {
    const [area] = shapeOutlines({ form: 'box', from: [300, 40], to: [100, 240] })
    expect(polygonArea(area!)).toBe(200 * 200)
  })

  it('covers every point within half the width of a line, and none 3 % farther off', () => {
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 2, max: 80 }),
        point,
        (points, width, p) => {
          const shape: FlawShape = { form: 'line', points, width }
          const parts =
            points.length === 1
              ? [[points[0]!, points[0]!] as const]
              : points.slice(1).map((b, k) => [points[k]!, b] as const)
          const distance = Math.min(...parts.map(([a, b]) => distanceToSegment(p, a, b)))
          if (distance < (width / 2) * 0.999999) expect(covered(p, shape)).toBe(true)
          if (distance > (width / 2) * 1.03) expect(covered(p, shape)).toBe(false)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('is counter-clockwise, and nothing without area', () => {
    const shapes: FlawShape[] = [
      HOLE,
      { form: 'box', from: [9, 9], to: [1, 1] },
      {
        form: 'line',
        points: [
          [0, 0],
          [50, 0],
          [50, -50],
        ],
        width: 10,
      },
    ]
    for (const area of shapes.flatMap(shapeOutlines)) expect(polygonArea(area)).toBeGreaterThan(0)
    expect(shapeOutlines({ form: 'round', centre: [0, 0], radius: 0 })).toEqual([])
    expect(shapeOutlines({ form: 'box', from: [5, 0], to: [5, 9] })).toEqual([])
    expect(shapeOutlines({ form: 'line', points: [], width: 10 })).toEqual([])
    expect(
      shapeOutlines({
        form: 'line',
        points: [
          [0, 0],
          [9, 9],
        ],
        width: 0,
      }),
    ).toEqual([])
  })
})

describe('flaws of a garment', () => {
  const shirt = emptyGarment('button-shirt', 'shirt')

  it('are those built in and those marked on the panel asked for', () => {
    const marked: Garment = { ...shirt, flaws: [mark('front-left', HOLE), mark('back', HOLE)] }
    expect(flawOutlines(shirt, 'front-left')).toHaveLength(2)
    expect(flawOutlines(marked, 'front-left')).toHaveLength(3)
    expect(flawOutlines(marked, 'back')).toHaveLength(1)
    expect(
      flawOutlines({ ...shirt, traits: { ...shirt.traits, 'chest-pocket': false } }, 'front-left'),
    ).toHaveLength(1)
  })

  it('stay where they are however the garment is opened', () => {
    const tee = emptyGarment('t-shirt', 'tee')
    const cut = panelsOf(tee)[0]!
    const unpicked = panelsOf({ ...tee, opening: 'unpicked' })[0]!
    // The seam loss of 10 mm lies between the two left edges: same origin, whatever was cut off.
    const leftmost = (outline: readonly Point[]) => Math.min(...outline.map(([x]) => x))
    expect(leftmost(unpicked.outline)).toBe(0)
    expect(leftmost(cut.outline)).toBeCloseTo(10, 3)
    expect(flawOutlines(shirt, 'yoke')).toEqual(flawOutlines({ ...shirt, opening: 'unpicked' }, 'yoke'))
    expect(flawOutlines(shirt, 'front-right')).toEqual(
      flawOutlines({ ...shirt, opening: 'unpicked' }, 'front-right'),
    )
  })

  it('that lie on a panel the traits no longer give are named, not dropped', () => {
    const tee: Garment = {
      ...emptyGarment('t-shirt', 'tee'),
      flaws: [mark('front', HOLE), mark('sleeve-left', HOLE)],
    }
    expect(orphanedFlaws(tee)).toEqual([])
    const tube: Garment = { ...tee, traits: { 'side-seams': false } }
    expect(orphanedFlaws(tube)).toEqual([tee.flaws[0]])
    expect(tube.flaws).toHaveLength(2)
  })

  it('are not orphaned by a figure half typed', () => {
    const tee: Garment = { ...emptyGarment('t-shirt', 'tee'), flaws: [mark('front', HOLE)] }
    const halfTyped: Garment = { ...tee, measures: { ...tee.measures, chest: 0 } }
    expect(panelsOf(halfTyped)).toEqual([])
    expect(orphanedFlaws(halfTyped)).toEqual([])
    expect(flawOutlines(halfTyped, 'front')).toHaveLength(1)
  })

  it('on a free outline lie in its own coordinates', () => {
    const scrap: Garment = {
      ...emptyGarment('free-outline', 'scrap'),
      outline: [
        [100, 100],
        [100, 400],
        [500, 400],
        [500, 100],
      ],
      flaws: [mark('outline', HOLE), mark('front', HOLE)],
    }
    const [panel] = panelsOf(scrap)
    expect(polygonArea(panel!.outline)).toBe(400 * 300)
    expect(panel!.edges).toEqual(['raw', 'raw', 'raw', 'raw'])
    expect(orphanedFlaws(scrap)).toEqual([scrap.flaws[1]])
    expect(panelsOf({ ...scrap, outline: null })).toEqual([])
  })
})
