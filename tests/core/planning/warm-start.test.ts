import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import type { SolveControl } from '../../../src/core/planning/check.ts'
import type { Lay, LayPlacement } from '../../../src/core/planning/lay.ts'
import type { LayProblem } from '../../../src/core/planning/lay-problem.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { readProblem } from '../../../src/readers/problem-file/read-problem.ts'
import { plantedProblem, type Room } from '../../../src/terminal/bench/planted/planted.ts'
import { answered, asking, boxPiece, patternOf, remnant } from '../../support/check-questions.ts'
import { randomSkirts } from '../../support/confined.ts'
import { latticeProblems } from '../../support/lattice.ts'
import { type LayFile, layFaults } from '../../support/lay-checker.ts'
import { layProblem, panel, piece, rectangle, within, withinSteps } from '../../support/lay-problems.ts'
import { faultsByBoth } from '../../support/planted.ts'

beforeAll(throwOnBrokenInvariants)

/** Time was up before anything began. */
function noTime(warmStart: readonly LayPlacement[]): SolveControl {
  return { seed: 1, clock: () => 0, deadline: { passed: () => true, left: () => 0 }, warmStart }
}

const ROOMS: readonly Room[] = [
  { inset: 3, dropped: 0 },
  { inset: 5, dropped: 0.1 },
  { inset: 8, dropped: 0.25 },
]

function places({ placements }: Pick<Lay, 'placements'>) {
  return placements
    .map(({ piece: id, panel: on, turn, mirrored, x, y }) => [id, on, turn, mirrored, x, y].join())
    .sort()
}

describe('a question that comes with a lay of its own', () => {
  it('fits without any time: garments cut apart, some with copies in pairs', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { problem, lay } = plantedProblem(seed, ROOMS[seed % 3] as Room)
      const again = answerLay(problem, noTime(lay.placements))
      expect({ seed, verdict: again.verdict }).toEqual({ seed, verdict: 'fits' })
      expect({ seed, places: places(again) }).toEqual({ seed, places: places(lay) })
    }
  })

  it('fits without any time: whatever was found on squared paper', () => {
    let fits = 0
    fc.assert(
      fc.property(latticeProblems, (file) => {
        const problem = readProblem(file)
        if (!problem.ok) throw new Error(JSON.stringify(problem.faults))
        const lay = answerLay(problem.value, withinSteps(10))
        if (lay.verdict !== 'fits') return
        fits++
        const again = answerLay(problem.value, noTime(lay.placements))
        expect(again.verdict).toBe('fits')
        expect(layFaults(file, writeLayFile(again) as LayFile)).toEqual([])
        // Copies that were left out may find a place now.
        expect(places(again)).toEqual(expect.arrayContaining(places(lay)))
      }),
      { numRuns: 120 },
    )
    expect(fits).toBeGreaterThan(20)
  })

  it('fits without any time: pieces that sit on a hem or show a print', () => {
    let fits = 0
    fc.assert(
      fc.property(randomSkirts, (problem) => {
        const lay = answerLay(problem, withinSteps(20))
        if (lay.verdict !== 'fits') return
        fits++
        expect(places(answerLay(problem, noTime(lay.placements)))).toEqual(places(lay))
      }),
      { numRuns: 90 },
    )
    expect(fits).toBeGreaterThan(10)
  })

  it('fits whichever copy lies where, and in whatever order they are named', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const { problem, lay } = plantedProblem(seed, ROOMS[2] as Room)
      // Copies of one piece change their numbers, and with them which of a pair is the one turned over.
      const swapped = lay.placements
        .map((placed) => {
          const { count = 1 } = problem.pieces.find(({ id }) => id === placed.piece) ?? {}
          return { ...placed, copy: count + 1 - placed.copy }
        })
        .reverse()
      const again = answerLay(problem, noTime(swapped))
      expect({ seed, verdict: again.verdict }).toEqual({ seed, verdict: 'fits' })
      expect(faultsByBoth(problem, again)).toEqual([])
    }
  })
})

describe('a lay of a question that was a little different', () => {
  const two = (width: number, more: Parameters<typeof piece>[1][] = []): LayProblem =>
    layProblem(
      [panel(rectangle(width, 300))],
      [piece(rectangle(100, 280), { count: 2 }), ...more.map((each) => piece(rectangle(40, 40), each))],
    )
  const laid = (x: number, copy: number, id = 'piece', y = 0): LayPlacement => {
    return { piece: id, copy, panel: 'panel', turn: 0, mirrored: false, x, y }
  }

  it('serves where it still holds', () => {
    expect(answerLay(two(300), noTime([laid(20, 1), laid(150, 2)]))).toMatchObject({ verdict: 'fits' })
  })

  it('is passed over where it does not', () => {
    const lay = answerLay(two(300), { ...within(5), warmStart: [laid(20, 1), laid(110, 2)] })
    expect(lay.verdict).toBe('fits')
    expect(places(lay)).not.toEqual(places({ placements: [laid(20, 1), laid(110, 2)] }))
  })

  it('loses an optional copy that has no place any more, and gains those that have one now', () => {
    const problem = two(300, [{ id: 'pocket', count: 2, optional: true }])
    const lay = answerLay(problem, noTime([laid(20, 1), laid(150, 2), laid(20, 1, 'pocket')]))
    expect(lay).toMatchObject({ verdict: 'fits', leftOut: [] })
    expect(places(lay)).toContain(places({ placements: [laid(20, 1)] })[0])
    expect(faultsByBoth(problem, lay)).toEqual([])
  })
})

describe('a check that comes with a lay of its own', () => {
  it('fits without any time, on a pile with all heads down too', () => {
    // Only at its foot is the cloth wide enough for the head of the piece.
    const cloth = remnant(
      [
        [0, 0],
        [200, 0],
        [150, 100],
        [50, 100],
      ],
      { surface: 'one-way' },
    )
    const shapes = { M: { form: 'trapezoid', top: 200, bottom: 100, height: 100, allowance: 0 } } as const
    const question = asking(patternOf([boxPiece('yoke', 1, 1, { shapes })]), cloth)
    const first = answered(question, within(5))
    expect(first).toMatchObject({ heads: 'down', lay: { verdict: 'fits' } })
    const again = answered(question, noTime(first.lay.placements))
    expect(again).toMatchObject({ heads: 'down', lay: { verdict: 'fits' } })
    expect(places(again.lay)).toEqual(places(first.lay))
  })
})
