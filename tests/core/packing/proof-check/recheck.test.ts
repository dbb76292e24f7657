import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../../src/core/base/deadline.ts'
import { ended } from '../../../../src/core/base/slices.ts'
import type { Point, Polygon, Way } from '../../../../src/core/geometry/index.ts'
import type { Certificate, Refutation } from '../../../../src/core/packing/answer.ts'
import type { PackingProblem } from '../../../../src/core/packing/problem.ts'
import { refuteByCells } from '../../../../src/core/packing/proof/grid.ts'
import { refuteEarly, refuteLate } from '../../../../src/core/packing/proof/refute.ts'
import { refuteWholeSquares } from '../../../../src/core/packing/proof/whole-squares.ts'
import { recheck } from '../../../../src/core/packing/proof-check/recheck.ts'
import { translateProblem } from '../../../../src/core/planning/translate.ts'
import { readProblem } from '../../../../src/readers/problem-file/read-problem.ts'
import { jigsaws } from '../../../support/jigsaw.ts'
import { latticeProblems } from '../../../support/lattice.ts'

const MUCH = 20_000_000

const rect = (width: number, height = width, x = 0, y = 0): Polygon => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]
const upright: Way[] = [{ turn: 0, mirrored: false, tilt: 0 }]
const anyhow: Way[] = [{ turn: 0, mirrored: false, tilt: 180 }]

interface Pieces {
  outline: Polygon
  copies?: number
  ways?: Way[]
}

function problemOf(
  regions: { outline: Polygon; forbidden?: Polygon[] }[],
  pieces: Pieces[],
  clearance = 0,
): PackingProblem {
  return {
    clearance,
    regions: regions.map(({ outline, forbidden = [] }, i) => ({ id: `region ${i}`, outline, forbidden })),
    items: pieces.map(({ outline, copies = 1, ways = upright }, i) => ({
      id: `item ${i}`,
      copies,
      outline,
      optional: false,
      ways: regions.map(() => ways),
    })),
  }
}

const square = (side: number) => [{ outline: rect(side) }]
const holed = { outline: rect(3), forbidden: [rect(1, 1, 1, 1)] }
const neck: Polygon = [...rect(100).slice(0, 3), [60, 100], [60, 400], [40, 400], [40, 100], [0, 100]]
const ell: Polygon = [
  [0, 0],
  [120, 0],
  [120, 40],
  [40, 40],
  [40, 120],
  [0, 120],
]

describe('a proof that there is no packing', () => {
  it.each<[string, PackingProblem, Certificate['by']]>([
    [
      'area, by a millionth',
      problemOf([{ outline: rect(100) }], [{ outline: rect(50, 100.0001), copies: 2 }]),
      'area',
    ],
    ['area round a hole', problemOf([holed], [{ outline: rect(1), copies: 9 }]), 'area'],
    [
      'area with clearance',
      problemOf([{ outline: rect(202.9, 100) }], [{ outline: rect(100), copies: 2 }], 3),
      'area',
    ],
    ['out of reach', problemOf([{ outline: neck }], [{ outline: rect(50, 60), copies: 4 }]), 'reach'],
    [
      'too long in any turn',
      problemOf([{ outline: rect(300, 400) }], [{ outline: rect(20, 520), ways: anyhow }]),
      'no-place',
    ],
    [
      'too wide on the diagonal',
      problemOf(square(300), [{ outline: rect(100, 390), ways: anyhow }]),
      'no-place',
    ],
    [
      'an L beside a hole',
      problemOf([{ ...holed, outline: rect(150) }], [{ outline: ell, copies: 2 }]),
      'sharing',
    ],
    [
      '3 squares in two of 1.9',
      problemOf([...square(1.9), ...square(1.9)], [{ outline: rect(1), copies: 3 }]),
      'sharing',
    ],
    ['5 squares in 2.9', problemOf(square(290), [{ outline: rect(100), copies: 5 }]), 'points'],
    [
      '2 squares in 1.95, any turn (s(2) = 2)',
      problemOf(square(195), [{ outline: rect(100), copies: 2, ways: anyhow }]),
      'points',
    ],
  ])('is verified: %s', (_, problem, by) => {
    const refutation = refuteEarly(problem) ?? refuteLate(problem, { deadline: NO_DEADLINE })
    expect(refutation?.certificate.by).toBe(by)
    expect(recheck(problem, refutation as Refutation, MUCH)).toBe('holds')
  })

  it('is verified where it rests on cells', () => {
    const three = problemOf(square(300), [
      { outline: rect(160, 140) },
      { outline: rect(150, 170) },
      { outline: rect(155, 135) },
    ])
    const refutation = ended(refuteByCells(three))
    expect(refutation?.certificate.by).toBe('cells')
    expect(recheck(three, refutation as Refutation, MUCH)).toBe('holds')
  })

  it('is verified where it rests on whole squares', () => {
    // Two opposite corners are of one colour, and a domino covers both (Black 1946, from memory).
    const board = { outline: rect(4), forbidden: [rect(1), rect(1, 1, 3, 3)] }
    const quarters: Way[] = [0, 90].map((turn) => ({ turn, mirrored: false, tilt: 0 }))
    const dominoes = problemOf([board], [{ outline: rect(1, 2), copies: 7, ways: quarters }])
    const refutation = ended(refuteWholeSquares(dominoes))
    expect(recheck(dominoes, refutation as Refutation, MUCH)).toBe('holds')
    const six = { ...dominoes, items: dominoes.items.map((item) => ({ ...item, copies: 6 })) }
    expect(recheck(six, refutation as Refutation, MUCH)).toBe('fails')
  })

  it('is verified on squared paper, or left open, never called false', () => {
    const counts = { holds: 0, open: 0, fails: 0 }
    fc.assert(
      fc.property(latticeProblems, (file) => {
        const problem = readProblem(file)
        if (!problem.ok) throw new Error(JSON.stringify(problem.faults))
        const { packing } = translateProblem(problem.value)
        const refutation = refuteEarly(packing)
        if (refutation) counts[recheck(packing, refutation, MUCH / 10)]++
      }),
      { numRuns: 300 },
    )
    expect(counts.fails).toBe(0)
    expect(counts.holds).toBeGreaterThan(20)
    expect(counts.open).toBeLessThan(counts.holds / 10)
  }, 120_000)

  it('is not verified of a problem that has a solution', () => {
    fc.assert(
      fc.property(jigsaws, ({ problem: exact }) => {
        const problem = withinRounding(exact)
        for (const refutation of claims(problem))
          expect(recheck(problem, refutation, 200_000)).not.toBe('holds')
      }),
      { numRuns: 60 },
    )
  }, 120_000)

  it('is not verified when it speaks of more copies than there are, or of others than it names', () => {
    const problem = problemOf(square(1.9), [{ outline: rect(1), copies: 2 }])
    const refutation = refuteEarly(problem) as Refutation
    expect(recheck(problem, refutation, MUCH)).toBe('holds')
    const fewer = { ...problem, items: problem.items.map((item) => ({ ...item, copies: 1 })) }
    expect(recheck(fewer, refutation, MUCH)).toBe('fails')
    expect(recheck(problem, { ...refutation, items: [] }, MUCH)).toBe('fails')
  })
})

/** Turned corners are rounded, and the areas of strips may then truly add up to more than the square: a little smaller, they do not. */
function withinRounding(problem: PackingProblem): PackingProblem {
  const smaller = 1 - 1e-12
  return {
    ...problem,
    items: problem.items.map((item) => ({
      ...item,
      outline: item.outline.map(([x, y]): Point => [x * smaller, y * smaller]),
    })),
  }
}

/** Every kind of proof, claimed of all there is. */
function claims({ items, regions }: PackingProblem): Refutation[] {
  const all = items.map((_, i) => i)
  const copies = all.flatMap((i) => Array.from({ length: items[i]!.copies }, () => i))
  const certificates: Certificate[] = [
    { by: 'area', items: all },
    { by: 'reach', items: all, regions: regions.map((_, r) => r) },
    { by: 'no-place', item: 0 },
    { by: 'sharing', copies },
    { by: 'points', items: all, points: regions.map(() => [[150, 150]]) },
    { by: 'squares', unit: 300 },
    { by: 'cells', copies, step: 30, tilt: 7.5 },
  ]
  return certificates.map((certificate) => ({
    kind: 'group',
    items: certificate.by === 'no-place' ? [0] : all,
    figures: {},
    certificate,
  }))
}
