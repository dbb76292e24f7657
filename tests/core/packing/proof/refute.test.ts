import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../../src/core/base/deadline.ts'
import type { Polygon, Way } from '../../../../src/core/geometry/index.ts'
import type { PackingProblem } from '../../../../src/core/packing/problem.ts'
import { lateProofs, refuteEarly, refuteLate } from '../../../../src/core/packing/proof/refute.ts'
import { jigsaws } from '../../../support/jigsaw.ts'

const rect = (width: number, height = width, x = 0, y = 0): Polygon => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]
const upright: Way[] = [{ turn: 0, mirrored: false, tilt: 0 }]
const quarters: Way[] = [0, 90, 180, 270].map((turn) => ({ turn, mirrored: false, tilt: 0 }))
const anyhow: Way[] = [{ turn: 0, mirrored: false, tilt: 180 }]

interface Pieces {
  outline: Polygon
  copies?: number
  ways?: Way[]
  optional?: boolean
}

function problemOf(
  regions: { outline: Polygon; forbidden?: Polygon[] }[],
  pieces: Pieces[],
  clearance = 0,
): PackingProblem {
  return {
    clearance,
    regions: regions.map(({ outline, forbidden = [] }, i) => ({ id: `region ${i}`, outline, forbidden })),
    items: pieces.map(({ outline, copies = 1, ways = upright, optional = false }, i) => ({
      id: `item ${i}`,
      copies,
      outline,
      optional,
      ways: regions.map(() => ways),
    })),
  }
}
const square = (side: number) => [{ outline: rect(side) }]
const holed = { outline: rect(3), forbidden: [rect(1, 1, 1, 1)] }

describe('proved within milliseconds', () => {
  it.each<[string, PackingProblem, string]>([
    [
      'more area than there is, by a millionth',
      problemOf([{ outline: rect(100) }], [{ outline: rect(50, 100.0001), copies: 2 }]),
      'area',
    ],
    [
      'more area than a flaw leaves: 9 unit squares in 3 × 3 with a hole',
      problemOf([holed], [{ outline: rect(1), copies: 9 }]),
      'area',
    ],
    [
      'area with clearance: two of 100 in 202.9 with 3 between',
      problemOf([{ outline: rect(202.9, 100) }], [{ outline: rect(100), copies: 2 }], 3),
      'area',
    ],
    [
      'area that large pieces never reach',
      problemOf(
        [{ outline: [...rect(100).slice(0, 3), [60, 100], [60, 400], [40, 400], [40, 100], [0, 100]] }],
        [{ outline: rect(50, 60), copies: 4 }],
      ),
      'area',
    ],
    [
      'a piece too long in any turn',
      problemOf([{ outline: rect(300, 400) }], [{ outline: rect(20, 520), ways: anyhow }]),
      'piece',
    ],
    [
      'a piece that is not too long, but too wide on the diagonal',
      problemOf(square(300), [{ outline: rect(100, 390), ways: anyhow }]),
      'piece',
    ],
    [
      'a piece across the grain',
      problemOf([{ outline: rect(300, 200) }], [{ outline: rect(100, 250) }]),
      'piece',
    ],
    ['two unit squares in 1.9 × 1.9', problemOf(square(1.9), [{ outline: rect(1), copies: 2 }]), 'group'],
    [
      'three unit squares in two panels of 1.9 × 1.9',
      problemOf([...square(1.9), ...square(1.9)], [{ outline: rect(1), copies: 3 }]),
      'group',
    ],
  ])('%s', (_, problem, kind) => {
    expect(refuteEarly(problem)).toMatchObject({ kind })
  })

  it('names the lengths of a piece that is too long', () => {
    const problem = problemOf(
      [{ outline: rect(300, 400) }],
      [
        { outline: rect(300, 400), optional: true },
        { outline: rect(40, 600), ways: anyhow },
      ],
    )
    expect(refuteEarly(problem)).toMatchObject({
      items: [1],
      figures: { longest: Math.hypot(40, 600), room: 500 },
    })
  })
})

describe('proved by search', () => {
  // Squares in squares: Friedman, "Packing unit squares in squares" (survey); axis-parallel by whole numbers.
  it.each<[string, PackingProblem]>([
    ['5 squares in 2.9, along the grain', problemOf(square(290), [{ outline: rect(100), copies: 5 }])],
    [
      '5 squares in 2.9, quarter turns',
      problemOf(square(290), [{ outline: rect(100), copies: 5, ways: quarters }]),
    ],
    [
      '5 squares in 2.70, any turn (s(5) = 2.7071)',
      problemOf(square(270), [{ outline: rect(100), copies: 5, ways: anyhow }]),
    ],
    [
      '2 squares in 1.95, any turn (s(2) = 2)',
      problemOf(square(195), [{ outline: rect(100), copies: 2, ways: anyhow }]),
    ],
    ['10 squares in 3.9, along the grain', problemOf(square(390), [{ outline: rect(100), copies: 10 }])],
    [
      'three unequal rectangles',
      problemOf(square(300), [
        { outline: rect(160, 140) },
        { outline: rect(150, 170) },
        { outline: rect(155, 135), copies: 2 },
      ]),
    ],
  ])(
    '%s',
    (_, problem) => {
      expect(refuteEarly(problem) ?? refuteLate(problem, { deadline: NO_DEADLINE })).not.toBeNull()
    },
    60_000,
  )
})

const RUNS = Number(process.env.PROOF_RUNS ?? 60)

/** A square of 300 in two strips, each turned by an angle of its own. */
const STRIPS: Pieces[] = [
  {
    ways: [{ turn: 263, mirrored: false, tilt: 4 }],
    outline: [
      [-297.7638454923966, -36.56080302154421],
      [0, 0],
      [-18.280401510772105, 148.8819227461983],
      [-316.0442470031687, 112.3211197246541],
    ],
  },
  {
    ways: [{ turn: 76, mirrored: false, tilt: 4 }],
    outline: [
      [327.37700222274907, -72.96779026149925],
      [36.28828433995012, -145.54435894139948],
      [72.57656867990023, -291.08871788279896],
      [363.6652865626992, -218.51214920289874],
    ],
  },
]

describe('never a false no', () => {
  it.each<[string, PackingProblem]>([
    ['a piece as large as its region', problemOf(square(100), [{ outline: rect(100) }])],
    [
      'a turned piece as large as its region',
      problemOf([{ outline: rect(300, 200) }], [{ outline: rect(200, 300), ways: quarters }]),
    ],
    ['8 unit squares round a hole', problemOf([holed], [{ outline: rect(1), copies: 8 }])],
    ['4 squares in 2 × 2', problemOf(square(200), [{ outline: rect(100), copies: 4 }])],
    [
      '5 squares in 2.71, any turn',
      problemOf(square(271), [{ outline: rect(100), copies: 5, ways: anyhow }]),
    ],
    [
      'two squares exactly the clearance apart',
      problemOf([{ outline: rect(203, 100) }], [{ outline: rect(100), copies: 2 }], 3),
    ],
    [
      'two diamonds exactly the clearance apart, corner to corner',
      problemOf(
        [{ outline: rect(203, 100) }],
        [
          {
            outline: [
              [50, 0],
              [100, 50],
              [50, 100],
              [0, 50],
            ],
            copies: 2,
          },
        ],
        3,
      ),
    ],
    [
      'two unit squares, each in a panel of 1.9',
      problemOf([...square(1.9), ...square(1.9)], [{ outline: rect(1), copies: 2 }]),
    ],
    [
      'two strips of a square whose areas add up to more by the rounding of doubles',
      problemOf(square(300), STRIPS),
    ],
    [
      'a square with a whisker too thin for a core, and two squares above it',
      problemOf(
        [{ outline: rect(300, 100.004) }],
        [
          { outline: [...rect(100).slice(0, 1), [300, 0], [300, 0.004], [100, 0.004], [100, 100], [0, 100]] },
          { outline: rect(100), copies: 2 },
        ],
      ),
    ],
    [
      'four squares exactly the clearance apart, parted by two strips of flaw as wide',
      problemOf(
        [{ outline: rect(203), forbidden: [rect(3, 203, 100, 0), rect(203, 3, 0, 100)] }],
        [{ outline: rect(100), copies: 4 }],
        3,
      ),
    ],
    ['nothing needed', problemOf(square(1), [{ outline: rect(2), optional: true }])],
  ])(
    '%s',
    (_, problem) => {
      expect(refuteEarly(problem)).toBeNull()
      expect(slices(problem, 300)).toBeNull()
    },
    60_000,
  )

  it(
    'holds for jigsaws, which have a solution and nothing to spare',
    () => {
      fc.assert(
        fc.property(jigsaws, ({ problem }) => {
          expect(refuteEarly(problem)).toBeNull()
          expect(slices(problem, 40)).toBeNull()
        }),
        { numRuns: RUNS },
      )
    },
    60_000 + 2000 * RUNS,
  )
})

/** The verdict of the late proofs after at most so many slices. */
function slices(problem: PackingProblem, most: number) {
  const proofs = lateProofs(problem)
  for (let i = 0; i < most; i++) {
    const { done, value } = proofs.next()
    if (done) return value
  }
  return null
}

describe('a proof by search', () => {
  it('takes turns and gives the same answer every time', () => {
    const problem = problemOf(square(290), [{ outline: rect(100), copies: 5 }])
    const count = () => {
      const proofs = lateProofs(problem)
      let n = 0
      for (let step = proofs.next(); !step.done; step = proofs.next()) n++
      return n
    }
    expect(count()).toBeGreaterThan(0)
    expect(count()).toBe(count())
  })

  it('ends when time is up', () => {
    const problem = problemOf(square(290), [{ outline: rect(100), copies: 5 }])
    expect(refuteLate(problem, { deadline: { passed: () => true, left: () => 0 } })).toBeNull()
  })
})
