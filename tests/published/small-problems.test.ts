import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../src/core/base/assertions.ts'
import type { Point, Polygon } from '../../src/core/geometry/index.ts'
import { answerLay } from '../../src/core/planning/answer-lay.ts'
import type { Lay } from '../../src/core/planning/lay.ts'
import type { LayPiece, LayProblem } from '../../src/core/planning/lay-problem.ts'
import { writeLayFile } from '../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../src/readers/problem-file/write-problem.ts'
import { boardWithoutCorners } from '../../src/terminal/bench/proof-problems.ts'
import { puzzles } from '../../src/terminal/bench/puzzles.ts'
import { type LayFile, layFaults, type ProblemFile } from '../support/lay-checker.ts'
import { layProblem, panel, piece, rectangle, within, withinSteps } from '../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

const SECONDS = 20

/** Answers, and holds every lay to the separate checker of files. */
function answered(problem: LayProblem): Lay {
  const lay = answerLay(problem, within(SECONDS))
  expect(layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
  return lay
}

type Row = readonly [name: string, expected: Lay['verdict'], problem: LayProblem]
const table = (rows: readonly Row[]) =>
  it.each(rows)(
    '%s: %s',
    (_, expected, problem) => {
      expect(answered(problem).verdict).toBe(expected)
    },
    4000 * SECONDS,
  )

const squares = (count: number, side: number, more: Partial<LayPiece> = {}) =>
  layProblem([panel(rectangle(side, side))], [piece(rectangle(100, 100), { id: 'square', count, ...more })])

describe('unit squares in a square (Friedman, "Packing unit squares in squares", dynamic survey; 100 mm to the unit)', () => {
  // s(2) = s(3) = 2, s(5) = 2 + 1/√2 = 2.7071…, s(8) = 3.
  table([
    ['4 in 2.00', 'fits', squares(4, 200)],
    ['2 in 1.99, any turn', 'cannot', squares(2, 199, { grain: 'any' })],
    ['5 in 2.71, any turn', 'fits', squares(5, 271, { grain: 'any' })],
    ['5 in 2.70, any turn', 'cannot', squares(5, 270, { grain: 'any' })],
    ['5 in 2.71, turns 0 and 45', 'fits', squares(5, 271, { turns: [0, 45] })],
    // Axis-parallel, n squares need a side of ⌈√n⌉ (whole numbers).
    ['5 in 2.90, along the grain', 'cannot', squares(5, 290)],
    ['5 in 2.90, along or across', 'cannot', squares(5, 290, { grain: 'either' })],
    ['8 in 3.00', 'fits', squares(8, 300)],
    ['9 in 3.00', 'fits', squares(9, 300)],
    ['10 in 3.00', 'cannot', squares(10, 300)],
  ])
})

describe('squares round a hole and in two panels (exact by whole numbers)', () => {
  const holed = panel(rectangle(300, 300), { flaws: [rectangle(100, 100, 100, 100)] })
  const small = (id: string) => panel(rectangle(190, 190), { id })
  const square = (count: number) => piece(rectangle(100, 100), { id: 'square', count })
  table([
    ['8 of 1 × 1 in 3 × 3 with a hole of 1 × 1', 'fits', layProblem([holed], [square(8)])],
    ['9 of them', 'cannot', layProblem([holed], [square(9)])],
    ['2 of 1 × 1 in 1.9 × 1.9', 'cannot', layProblem([small('a')], [square(2)])],
    ['2 in two such panels', 'fits', layProblem([small('a'), small('b')], [square(2)])],
    ['3 in two such panels', 'cannot', layProblem([small('a'), small('b')], [square(3)])],
  ])
})

/** One of the tans at 50 mm to the unit, about its middle. */
const tan = (id: string, points: Polygon): LayPiece => {
  const [mx, my] = points.reduce(
    ([sx, sy], [x, y]) => [sx + x / points.length, sy + y / points.length],
    [0, 0],
  )
  return piece(
    points.map(([x, y]): Point => [50 * (x - mx), 50 * (y - my)]),
    { id, grain: 'either' },
  )
}

// The seven tans in a square of side 4 (traditional; areas 4 4 1 2 2 2 1 add up to 16), each turned to its place.
const TANS = [
  tan('large 1', [
    [0, 0],
    [4, 0],
    [2, 2],
  ]),
  tan('large 2', [
    [0, 0],
    [2, 2],
    [0, 4],
  ]),
  tan('small 1', [
    [4, 0],
    [4, 2],
    [3, 1],
  ]),
  tan('square', [
    [2, 2],
    [3, 1],
    [4, 2],
    [3, 3],
  ]),
  tan('medium', [
    [4, 2],
    [4, 4],
    [2, 4],
  ]),
  tan('slanted', [
    [0, 4],
    [1, 3],
    [3, 3],
    [2, 4],
  ]),
  tan('small 2', [
    [2, 2],
    [3, 3],
    [1, 3],
  ]),
]

/** The pieces of a jigsaw without turns: Dighe and Jakiela 1996, instance 2 (10 pieces, a square of side 100 filled exactly). */
const DIGHE_2: readonly Polygon[] = [
  [
    [0, 0],
    [33, 0],
    [33, 19],
    [3, 11],
  ],
  [
    [0, 0],
    [42, 0],
    [37, 30],
    [0, 19],
  ],
  [
    [5, 0],
    [30, 0],
    [30, 51],
    [0, 30],
  ],
  [
    [0, 0],
    [3, 11],
    [7, 33],
    [8, 38],
    [0, 36],
  ],
  [
    [0, 0],
    [30, 8],
    [67, 19],
    [56, 29],
    [4, 22],
  ],
  [
    [23, 0],
    [53, 21],
    [53, 70],
    [19, 70],
    [7, 42],
    [0, 23],
    [12, 10],
  ],
  [
    [0, 0],
    [52, 7],
    [40, 20],
    [47, 39],
    [3, 30],
    [1, 5],
  ],
  [
    [0, 0],
    [8, 2],
    [10, 27],
    [12, 64],
    [0, 64],
  ],
  [
    [0, 0],
    [44, 9],
    [16, 37],
    [2, 37],
  ],
  [
    [0, 28],
    [28, 0],
    [40, 28],
  ],
]

const tetromino = (id: string, points: Polygon): LayPiece =>
  piece(
    points.map(([x, y]): Point => [50 * x, 50 * y]),
    { id, grain: 'either', mirror: 'free' },
  )

// The five free tetrominoes: 20 squares, but the T covers 3 + 1 of a chequerboard and the others 2 + 2 (classical).
const TETROMINOES = [
  tetromino('I', rectangle(1, 4)),
  tetromino('O', rectangle(2, 2)),
  tetromino('T', [
    [0, 0],
    [3, 0],
    [3, 1],
    [2, 1],
    [2, 2],
    [1, 2],
    [1, 1],
    [0, 1],
  ]),
  tetromino('S', [
    [0, 0],
    [2, 0],
    [2, 1],
    [3, 1],
    [3, 2],
    [1, 2],
    [1, 1],
    [0, 1],
  ]),
  tetromino('L', [
    [0, 0],
    [2, 0],
    [2, 1],
    [1, 1],
    [1, 3],
    [0, 3],
  ]),
]
const board = (width: number, height: number) => panel(rectangle(50 * width, 50 * height))

describe('puzzles', () => {
  table([
    ['five tetrominoes in 4 × 5', 'cannot', layProblem([board(4, 5)], TETROMINOES)],
    ['five tetrominoes in 2 × 10', 'cannot', layProblem([board(2, 10)], TETROMINOES)],
    ['five tetrominoes in 5 × 5', 'fits', layProblem([board(5, 5)], TETROMINOES)],
    [
      'the tangram in its square, 0.6 mm to spare',
      'fits',
      layProblem([panel(rectangle(200.6, 200.6))], TANS),
    ],
    [
      'the tangram in a square 0.1 mm too small',
      'cannot',
      layProblem([panel(rectangle(199.9, 199.9))], TANS),
    ],
    ['dighe2 at its length', 'fits', jigsaw(100)],
    ['dighe2 at 99.99', 'cannot', jigsaw(99.99)],
  ])
})

// Found by steps, not by time: these have nothing to spare, and a busy machine is slow, not wrong.
const PATIENT_STEPS = 200_000

describe('puzzles whose pieces turn and turn over as they like, nothing to spare', () => {
  // 6 by 10: 2339 ways, 5 by 12: 1010 ways (Haselgrove and Haselgrove 1960); the tangram is traditional.
  it.each(puzzles(undefined).map((puzzle) => [puzzle.name, puzzle] as const))('%s: fits', (_, puzzle) => {
    const lay = answerLay(puzzle, withinSteps(PATIENT_STEPS))
    expect(lay.verdict).toBe('fits')
    expect(layFaults(writeProblem(puzzle) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
  })

  // Black 1946 (from memory): a domino covers both colours, and the two corners taken away have one.
  it.each([4, 6])('dominoes on a board of %d without two corners: cannot', (side) => {
    expect(answered(boardWithoutCorners(side)).verdict).toBe('cannot')
  })
})

function jigsaw(length: number): LayProblem {
  const pieces = DIGHE_2.map((outline, i) => piece(outline, { id: `piece ${i}`, turns: [0] }))
  return layProblem([panel(rectangle(length, 100))], pieces)
}

describe('rules of cloth (common practice; lengths exact by whole numbers)', () => {
  // A right trapezium of 60 + 40 by 100: two, one of them head down, make a square; a mirrored one does not.
  const slanted: Polygon = [
    [0, 0],
    [60, 0],
    [40, 100],
    [0, 100],
  ]
  const strip = (more = {}) => panel(rectangle(100, 100), more)
  const two = (more: Partial<LayPiece>) => [piece(slanted, { id: 'gore', count: 2, ...more })]
  const long = (more: Partial<LayPiece>) => [piece(rectangle(40, 250), { id: 'band', ...more })]
  const wide = panel(rectangle(260, 100), { stretch: { across: 20, along: 60 } })
  table([
    ['two gores, one head down', 'fits', layProblem([strip()], two({}))],
    ['the same on velvet', 'cannot', layProblem([strip({ surface: 'one-way' })], two({}))],
    [
      'on velvet, where nobody minds',
      'fits',
      layProblem([strip({ surface: 'one-way' })], two({ surface: 'any' })),
    ],
    [
      'a pair on velvet meets along the slant',
      'fits',
      layProblem([panel(rectangle(120, 100), { surface: 'one-way' })], two({ mirror: 'pairs' })),
    ],
    [
      'a pair of gores head up and turned over, 100 wide',
      'cannot',
      layProblem([strip({ surface: 'one-way' })], two({ mirror: 'pairs' })),
    ],
    ['a band along the grain on a wide panel', 'cannot', layProblem([wide], long({}))],
    ['the band across', 'fits', layProblem([wide], long({ grain: 'either' }))],
    [
      'the band across, stretch up and down needed: 20 of 50',
      'cannot',
      layProblem([wide], long({ grain: 'either', needs: { across: 0, along: 50 } })),
    ],
    [
      'the band across, stretch around needed: 60 of 50',
      'fits',
      layProblem([wide], long({ grain: 'either', needs: { across: 50, along: 0 } })),
    ],
    [
      'a lining on main cloth',
      'cannot',
      layProblem(
        [panel(rectangle(200, 200), { cloth: 'main' })],
        [piece(rectangle(10, 10), { cloth: 'lining' })],
      ),
    ],
    [
      'two of 50 × 100.0001 on 100 × 100',
      'cannot',
      layProblem([panel(rectangle(100, 100))], [piece(rectangle(50, 100.0001), { count: 2 })]),
    ],
    [
      'two of 100 with 3 between on 203',
      'fits',
      layProblem([panel(rectangle(203, 100))], [piece(rectangle(100, 100), { count: 2 })], 3),
    ],
    [
      'two of 100 with 3 between on 202.9',
      'cannot',
      layProblem([panel(rectangle(202.9, 100))], [piece(rectangle(100, 100), { count: 2 })], 3),
    ],
    [
      'a piece beside a hole that leaves just room',
      'fits',
      layProblem(
        [panel(rectangle(100, 300), { flaws: [rectangle(20, 20, 40, 140)] })],
        [piece(rectangle(100, 140), { count: 2 })],
      ),
    ],
    [
      'a piece and a hole 1 mm too far in',
      'cannot',
      layProblem(
        [panel(rectangle(100, 300), { flaws: [rectangle(20, 20, 40, 139)] })],
        [piece(rectangle(100, 140), { count: 2 })],
      ),
    ],
  ])
})
