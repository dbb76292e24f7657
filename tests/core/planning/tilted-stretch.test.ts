import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { polygonOriented } from '../../../src/core/geometry/index.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import type { LayProblem } from '../../../src/core/planning/lay-problem.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'
import { type LayFile, layFaults, type ProblemFile, servesAt } from '../../support/lay-checker.ts'
import { layProblem, panel, piece, rectangle, withinSteps } from '../../support/lay-problems.ts'
import { randomRuns } from '../../support/random-runs.ts'

beforeAll(throwOnBrokenInvariants)

function answered(problem: LayProblem) {
  const lay = answerLay(problem, withinSteps(2000))
  expect(layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
  return lay
}

/** Cloth on which the piece has room at this turn, and at the one opposite, alone. */
const turnedCloth = (turn: number, stretch: { across: number; along: number }) =>
  panel(polygonOriented(rectangle(200.4, 300.4, -100.2, -150.2), { turn, mirrored: false }), { stretch })

describe('a tilt and the stretch of the cloth', () => {
  const jersey = { across: 60, along: 20 }
  const needing = (across: number, along: number, tilt: number) =>
    piece(rectangle(200, 300), { needs: { across, along }, tilt })

  it.each([1.5, 358.5, 181.5])('a lean to %d is the grain, where it is allowed', (turn) => {
    expect(answered(layProblem([turnedCloth(turn, jersey)], [needing(40, 0, 2)])).verdict).toBe('fits')
  })

  it('beyond the tilt there is no such turn', () => {
    expect(answered(layProblem([turnedCloth(2, jersey)], [needing(40, 0, 1.5)])).verdict).toBe('cannot')
  })

  it('crosswise, a lean gives what the quarter turn gives', () => {
    const crosswise = { ...needing(0, 40, 2), grain: 'either' as const }
    expect(answered(layProblem([turnedCloth(91.5, jersey)], [crosswise])).verdict).toBe('fits')
    expect(answered(layProblem([turnedCloth(1.5, jersey)], [crosswise])).verdict).toBe('cannot')
  })
})

const figure = fc.constantFrom(0, 20, 40, 60)
const RUNS = randomRuns('tilted stretch', 400)

describe('random cloth that is cut at an angle', () => {
  // One turn, and its opposite, is all that has room: whether it serves is for the separate checker to say.
  it(
    'never gets a false yes or a false no',
    () => {
      const counts = { fits: 0, cannot: 0, 'not-found': 0 }
      const rule = {
        turn: fc.constantFrom(0, 1, 3, 9, 45, 87, 90, 92, 177, 268, 355),
        stretch: fc.record({ across: figure, along: figure }),
        needs: fc.record({ across: figure, along: figure }),
        tilt: fc.constantFrom(0, 1, 2, 5, 10),
        grain: fc.constantFrom('along', 'either', 'bias', 'any'),
        surface: fc.constantFrom('plain', 'plain', 'one-way'),
        own: fc.constantFrom(null, null, [5], [85, 357], [40, 182]),
      } as const
      fc.assert(
        fc.property(fc.record(rule), ({ turn, stretch, needs, tilt, grain, surface, own }) => {
          const cloth = { ...turnedCloth(turn, stretch), surface }
          const asked = piece(rectangle(200, 300), { needs, tilt, grain, turns: own })
          const problem = layProblem([cloth], [asked])
          const lay = answered(problem)
          counts[lay.verdict]++
          const file = writeProblem(problem) as ProblemFile
          const serves = [turn, turn + 180].some((at) => servesAt(file.pieces[0]!, file.panels[0]!, at))
          if (serves) expect(lay.verdict).not.toBe('cannot')
          RUNS.tick(counts)
        }),
        { numRuns: RUNS.count },
      )
      expect(Math.min(counts.fits, counts.cannot)).toBeGreaterThan(RUNS.count / 20)
      expect(counts['not-found']).toBeLessThan(RUNS.count / 10)
    },
    100 * RUNS.count + 60_000,
  )
})
