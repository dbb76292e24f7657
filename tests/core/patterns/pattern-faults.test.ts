import { describe, expect, it } from 'vitest'
import type { OutlinePoint, Pattern, PieceShape } from '../../../src/core/patterns/pattern.ts'
import { patternFaults } from '../../../src/core/patterns/pattern-faults.ts'
import { shapeFaults } from '../../../src/core/patterns/shape-faults.ts'
import { aPattern, aPiece, BOX } from '../../support/pattern-builder.ts'

function corners(...points: (readonly [number, number])[]): OutlinePoint[] {
  return points.map((at) => ({ at, allowance: 10 }))
}

describe('patternFaults', () => {
  it('finds nothing wrong with a right pattern', () => {
    expect(patternFaults(aPattern())).toEqual([])
  })

  it('asks for pieces and versions where there are none', () => {
    const fields = patternFaults(aPattern({ pieces: [], versions: [] })).map(({ field }) => field)
    expect(fields).toEqual(['pieces', 'versions'])
  })

  it.each<[string, Partial<Pattern>, string, RegExp]>([
    ['no name', { name: ' ' }, 'name', /not be empty/],
    ['no sizes', { sizes: [], pieces: [aPiece({ shapes: {} })] }, 'sizes', /at least one size/],
    ['a size twice', { sizes: ['S', 'M', 'S'] }, 'sizes[2]', /“S” is there twice/],
    [
      'a size without a name',
      { sizes: ['S', 'M', ''], pieces: [aPiece({ shapes: { S: BOX, M: BOX, '': BOX } })] },
      'sizes[2]',
      /not be empty/,
    ],
    ['a piece twice', { pieces: [aPiece(), aPiece()] }, 'pieces[1]', /“body” is there twice/],
    ['no versions', { versions: [] }, 'versions', /at least one version/],
    [
      'an empty version',
      { versions: [{ id: 'a', name: 'A', pieces: [] }] },
      'versions[0].pieces',
      /at least one piece/,
    ],
    [
      'a version of unknown pieces',
      { versions: [{ id: 'a', name: 'A', pieces: ['body', 'lid'] }] },
      'versions[0].pieces[1]',
      /no piece “lid”/,
    ],
    [
      'a version with a piece twice',
      { versions: [{ id: 'a', name: 'A', pieces: ['body', 'body'] }] },
      'versions[0].pieces[1]',
      /copies instead/,
    ],
    ['a gap below nothing', { clearance: -1 }, 'clearance', /from 0 to 100/],
    ['a seam of less than nothing', { leastAllowance: -1 }, 'leastAllowance', /from 0/],
    ['a hem deeper than any', { leastHem: 501 }, 'leastHem', /from 0 to 500/],
    ['a lean that is no tilt any more', { mostTilt: 11 }, 'mostTilt', /from 0 to 10/],
    ['a missing size', { pieces: [aPiece({ shapes: { S: BOX } })] }, 'pieces[0].shapes.M', /is missing/],
    [
      'a shape of no size',
      { pieces: [aPiece({ shapes: { S: BOX, M: BOX, '2 XL': BOX } })] },
      'pieces[0].shapes["2 XL"]',
      /no size of this pattern/,
    ],
    ['an odd pair', { pieces: [aPiece({ copies: 3, mirror: 'pairs' })] }, 'pieces[0].copies', /even/],
    ['half a copy', { pieces: [aPiece({ copies: 1.5 })] }, 'pieces[0].copies', /whole/],
    ['no copy', { pieces: [aPiece({ copies: 0 })] }, 'pieces[0].copies', /from 1/],
    ['too much tilt', { pieces: [aPiece({ tilt: 11 })] }, 'pieces[0].tilt', /from 0 to 10/],
    ['a negative tilt', { pieces: [aPiece({ tilt: -1 })] }, 'pieces[0].tilt', /from 0 to 10/],
    [
      'shrinking stretch',
      { pieces: [aPiece({ needs: { across: -5, along: 0 } })] },
      'pieces[0].needs.across',
      /from 0/,
    ],
    ['no role', { pieces: [aPiece({ role: '' })] }, 'pieces[0].role', /not be empty/],
    [
      'no width',
      { pieces: [aPiece({ shapes: { S: BOX, M: { ...BOX, width: 0 } } })] },
      'pieces[0].shapes.M.width',
      /more than 0/,
    ],
  ])('names the field: %s', (_, change, field, message) => {
    expect(patternFaults(aPattern(change))).toEqual([{ field, message: expect.stringMatching(message) }])
  })
})

describe('shapeFaults', () => {
  it.each<[string, PieceShape]>([
    ['box', BOX],
    ['trapezoid', { form: 'trapezoid', top: 1, bottom: 2, height: 3, allowance: 0 }],
    ['triangle', { form: 'triangle', width: 1, height: 3, allowance: 0 }],
    ['half-moon', { form: 'half-moon', width: 10, height: 3, allowance: 0 }],
    ['circle', { form: 'circle', diameter: 10, allowance: 0 }],
    [
      'strip',
      { form: 'strip', edge: 10, ratio: 2, height: 1, folded: true, endAllowance: 0, sideAllowance: 0 },
    ],
    ['outline', { form: 'outline', points: corners([0, 0], [10, 0], [10, 10]), onFold: false }],
  ])('accepts a right %s', (_, shape) => {
    expect(shapeFaults(shape)).toEqual([])
  })

  it.each<[string, PieceShape, string]>([
    ['endless', { ...BOX, width: Number.POSITIVE_INFINITY } as PieceShape, 'width'],
    ['not a number', { ...BOX, height: Number.NaN } as PieceShape, 'height'],
    [
      'longer than 20 m',
      { form: 'strip', edge: 20_001, ratio: 1, height: 1, folded: false, endAllowance: 0, sideAllowance: 0 },
      'edge',
    ],
    ['a negative allowance', { form: 'circle', diameter: 9, allowance: -1 }, 'allowance'],
    ['two points', { form: 'outline', points: corners([0, 0], [10, 0]), onFold: false }, 'points'],
    [
      'a bow tie',
      { form: 'outline', points: corners([0, 0], [10, 10], [10, 0], [0, 10]), onFold: false },
      'points',
    ],
    [
      'both sides of the fold',
      { form: 'outline', points: corners([0, 0], [30, 0], [-30, 90], [0, 100]), onFold: true },
      'points',
    ],
    [
      'a repeated point',
      { form: 'outline', points: corners([0, 0], [10, 0], [10, 0], [0, 10]), onFold: false },
      'points[2]',
    ],
    [
      'the first point again',
      { form: 'outline', points: corners([0, 0], [10, 0], [0, 10], [0, 0]), onFold: false },
      'points[0]',
    ],
    ['no area', { form: 'outline', points: corners([0, 0], [10, 0], [20, 0.01]), onFold: false }, 'points'],
    [
      '2,001 points',
      {
        form: 'outline',
        points: Array.from({ length: 2001 }, (_, k) => ({ at: [k, k * k], allowance: 0 }) as const),
        onFold: false,
      },
      'points',
    ],
  ])('refuses %s', (_, shape, field) => {
    expect(shapeFaults(shape).map((fault) => fault.field)).toEqual([field])
  })

  it('names a coordinate deep in a curve', () => {
    const points: OutlinePoint[] = [
      { at: [0, 0], allowance: 10 },
      {
        at: [10, 0],
        curve: [
          [10, Number.NaN],
          [0, 10],
        ],
        allowance: 10,
      },
      { at: [0, 10], allowance: -1 },
    ]
    const fields = shapeFaults({ form: 'outline', points, onFold: false }, ['shapes', 'M']).map(
      ({ field }) => field,
    )
    expect(fields).toEqual(['shapes.M.points[1].curve[0][1]', 'shapes.M.points[2].allowance'])
  })
})
