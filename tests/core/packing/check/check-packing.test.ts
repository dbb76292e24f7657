import { describe, expect, it } from 'vitest'
import type { Point, Polygon } from '../../../../src/core/geometry/index.ts'
import { checkPacking, neededAreAll } from '../../../../src/core/packing/check/check-packing.ts'
import type { PackingProblem, Placement } from '../../../../src/core/packing/problem.ts'

const square = (side: number): Polygon => [
  [0, 0],
  [side, 0],
  [side, side],
  [0, side],
]
const upright = [{ turn: 0, mirrored: false, tilt: 0 }]

/** Copies of some outlines in one region, any turn. */
function problemOf(outlines: readonly Polygon[], more: Partial<PackingProblem> = {}): PackingProblem {
  return {
    clearance: 0,
    regions: [{ id: 'panel', outline: square(300), forbidden: [] }],
    items: outlines.map((outline, i) => ({
      id: `item ${i}`,
      copies: 1,
      outline,
      optional: false,
      ways: [[{ turn: 0, mirrored: false, tilt: 180 }]],
    })),
    ...more,
  }
}

const at = (item: number, x: number, y: number, turn = 0): Placement => ({
  item,
  copy: 0,
  region: 0,
  turn,
  mirrored: false,
  x,
  y,
})

const kinds = (problem: PackingProblem, ...placements: Placement[]): string[] =>
  checkPacking(problem, placements, []).map(({ kind }) => kind)

describe('two pieces', () => {
  const two = problemOf([square(100), square(100)])

  it.each([
    ['side by side', 100, 0, []],
    ['corner to corner', 100, 100, []],
    ['touching along part of an edge', 100, 37, []],
    ['0.009 mm into each other', 99.991, 0, []],
    ['0.011 mm into each other', 99.989, 0, ['too-close']],
    ['on the same place', 0, 0, ['too-close']],
    ['on nearly the same place', 0.004, 0.003, ['too-close']],
    ['half on each other', 50, 0, ['too-close']],
  ] as const)('%s', (_, x, y, expected) => {
    expect(kinds(two, at(0, 0, 0), at(1, x, y))).toEqual(expected)
  })

  it('sees a cross of two bars, no corner of one inside the other', () => {
    const bar: Polygon = [
      [-100, -10],
      [100, -10],
      [100, 10],
      [-100, 10],
    ]
    expect(kinds(problemOf([bar, bar]), at(0, 150, 150), at(1, 150, 150, 90))).toEqual(['too-close'])
  })

  it('sees one piece inside the other', () => {
    expect(kinds(problemOf([square(100), square(10)]), at(0, 0, 0), at(1, 50, 50))).toEqual(['too-close'])
  })

  it('lets a piece lie in the bay of another, touching all round', () => {
    const bay: Polygon = [
      [0, 0],
      [90, 0],
      [90, 90],
      [60, 90],
      [60, 30],
      [30, 30],
      [30, 90],
      [0, 90],
    ]
    const peg: Polygon = [
      [0, 0],
      [30, 0],
      [30, 60],
      [0, 60],
    ]
    expect(kinds(problemOf([bay, peg]), at(0, 0, 0), at(1, 30, 30))).toEqual([])
    expect(kinds(problemOf([bay, peg]), at(0, 0, 0), at(1, 30, 29.98))).toEqual(['too-close'])
  })

  it('sees a thin spike driven into a body', () => {
    const spike: Polygon = [
      [0, 0],
      [0, 0.015],
      [-80, 0.0075],
    ]
    expect(kinds(problemOf([square(100), spike]), at(0, 0, 0), at(1, 140, 50))).toEqual(['too-close'])
  })

  it('accepts slanted edges that touch up to rounding', () => {
    const third = Math.PI / 3
    const wedge: Polygon = [
      [0, 0],
      [100, 0],
      [100 * Math.cos(third), 100 * Math.sin(third)],
    ]
    const problem = problemOf([wedge, wedge])
    expect(kinds(problem, at(0, 0, 0), at(1, 100, 0, 60))).toEqual([])
  })
})

describe('clearance', () => {
  const three = problemOf([square(100), square(100)], { clearance: 3 })

  it.each([
    [103, 0, []],
    [102.995, 0, []],
    [102.98, 0, ['too-close']],
    // Corner to corner the distance is √(2.2² + 2.2²) = 3.11, then √(2.1² + 2.1²) = 2.97.
    [102.2, 102.2, []],
    [102.1, 102.1, ['too-close']],
    [20, 0, ['too-close']],
  ] as const)('second square at (%d, %d)', (x, y, expected) => {
    expect(kinds(three, at(0, 0, 0), at(1, x, y))).toEqual(expected)
  })

  it('counts between pieces only: edges and flaws may be touched', () => {
    const problem = problemOf([square(100)], {
      clearance: 3,
      regions: [
        { id: 'panel', outline: square(300), forbidden: [square(100).map(([x, y]): Point => [x + 100, y])] },
      ],
    })
    expect(kinds(problem, at(0, 0, 0))).toEqual([])
  })

  it('does not accept one piece deep inside another', () => {
    expect(kinds(problemOf([square(200), square(10)], { clearance: 3 }), at(0, 0, 0), at(1, 90, 90))).toEqual(
      ['too-close'],
    )
  })
})

describe('region', () => {
  const one = problemOf([square(100)])
  const notched: Polygon = [
    [0, 0],
    [300, 0],
    [300, 300],
    [150.002, 300],
    [150, 50],
    [149.998, 300],
    [0, 300],
  ]

  it.each([
    [0, 0, []],
    [200, 200, []],
    [-0.009, 0, []],
    [-0.011, 0, ['outside']],
    [500, 500, ['outside']],
    [250, 0, ['outside']],
  ] as const)('piece at (%d, %d)', (x, y, expected) => {
    expect(kinds(one, at(0, x, y))).toEqual(expected)
  })

  it('accepts a piece that is the whole region', () => {
    expect(kinds(problemOf([square(300)]), at(0, 0, 0))).toEqual([])
  })

  it('refuses a piece larger than the region all round', () => {
    expect(kinds(problemOf([square(400)]), at(0, -50, -50))).toEqual(['outside'])
  })

  it('refuses a piece across a slit thinner than the tolerance', () => {
    const problem = problemOf([square(100)], { regions: [{ id: 'slit', outline: notched, forbidden: [] }] })
    expect(kinds(problem, at(0, 100, 100))).toEqual(['outside'])
    expect(kinds(problem, at(0, 10, 100))).toEqual([])
  })

  it('refuses a piece in the bay of a region', () => {
    const bay: Polygon = [
      [0, 0],
      [300, 0],
      [300, 300],
      [200, 300],
      [200, 200],
      [100, 200],
      [100, 300],
      [0, 300],
    ]
    const problem = problemOf([square(100)], { regions: [{ id: 'bay', outline: bay, forbidden: [] }] })
    expect(kinds(problem, at(0, 100, 200))).toEqual(['outside'])
  })

  it('refuses ground that is forbidden, and allows its edge', () => {
    const hole = square(100).map(([x, y]): Point => [x + 100, y + 100])
    const problem = problemOf([square(100)], {
      regions: [{ id: 'holed', outline: square(300), forbidden: [hole] }],
    })
    expect(kinds(problem, at(0, 0, 100))).toEqual([])
    expect(kinds(problem, at(0, 100, 100))).toEqual(['forbidden'])
    expect(kinds(problem, at(0, 0.02, 100))).toEqual(['forbidden'])
  })

  it('refuses a piece that surrounds a hole', () => {
    const hole = square(10).map(([x, y]): Point => [x + 50, y + 50])
    const problem = problemOf([square(100)], {
      regions: [{ id: 'holed', outline: square(300), forbidden: [hole] }],
    })
    expect(kinds(problem, at(0, 0, 0))).toEqual(['forbidden'])
  })
})

describe('copies and ways', () => {
  const item = { id: 'tie', copies: 2, outline: square(50), optional: false, ways: [upright] }
  const problem = problemOf([], { items: [item] })
  const first = at(0, 0, 0)

  it('wants every copy once', () => {
    const second = { ...at(0, 100, 0), copy: 1 }
    expect(checkPacking(problem, [first, second], [])).toEqual([])
    expect(kinds(problem, first)).toEqual(['missing'])
    expect(kinds(problem, first, { ...second, copy: 0 })).toEqual(['twice', 'missing'])
    expect(kinds(problem, first, second, { ...at(0, 200, 0), copy: 2 })).toEqual(['unknown'])
    expect(kinds(problem, first, { ...second, region: 7 })).toEqual(['unknown'])
    expect(checkPacking(problem, [first], [{ item: 0, copy: 1 }])).toEqual([])
  })

  it('tells needed copies from optional ones', () => {
    const left = [{ item: 0, copy: 1 }]
    expect(neededAreAll(problem, left)).toBe(false)
    expect(neededAreAll({ ...problem, items: [{ ...item, optional: true }] }, left)).toBe(true)
  })

  it.each([
    [0, false, [{ turn: 0, mirrored: false, tilt: 0 }], []],
    [360, false, [{ turn: 0, mirrored: false, tilt: 0 }], []],
    [0, true, [{ turn: 0, mirrored: false, tilt: 0 }], ['turn']],
    [357, false, [{ turn: 0, mirrored: false, tilt: 3 }], []],
    [356.9, false, [{ turn: 0, mirrored: false, tilt: 3 }], ['turn']],
    [137, true, [{ turn: 0, mirrored: true, tilt: 180 }], []],
    [0, false, [], ['turn']],
  ] as const)('turn %d, mirrored %s, ways %j', (turn, mirrored, ways, expected) => {
    const single = problemOf([], { items: [{ ...item, copies: 1, ways: [ways] }] })
    expect(kinds(single, { ...at(0, 150, 150, turn), mirrored })).toEqual(expected)
  })
})
