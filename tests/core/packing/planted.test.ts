import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import { readProblem } from '../../../src/readers/problem-file/read-problem.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'
import { plantedProblem, type Room } from '../../../src/terminal/bench/planted/planted.ts'
import { withinSteps } from '../../support/lay-problems.ts'
import { faultsByBoth } from '../../support/planted.ts'
import { randomRuns } from '../../support/random-runs.ts'

beforeAll(throwOnBrokenInvariants)

const TIGHT: Room = { inset: 3, dropped: 0 }
const MIDDLING: Room = { inset: 5, dropped: 0.1 }
const ROOMY: Room = { inset: 8, dropped: 0.25 }

describe('planted problems', () => {
  it.each([TIGHT, MIDDLING, ROOMY])('have a lay that both checkers accept, %o', (room) => {
    for (let seed = 1; seed <= 15; seed++) {
      const { problem, lay } = plantedProblem(seed, room)
      expect({ seed, faults: faultsByBoth(problem, lay) }).toEqual({ seed, faults: [] })
      expect(readProblem(writeProblem(problem))).toEqual({ ok: true, value: problem })
    }
  })

  it('have no lay any more when a piece is pushed onto the next', () => {
    const { problem, lay } = plantedProblem(1, TIGHT)
    const [first, ...rest] = lay.placements
    const pushed = { ...lay, placements: [{ ...first!, x: first!.x + 40 }, ...rest] }
    expect(faultsByBoth(problem, pushed).length).toBeGreaterThan(0)
  })

  it('are the same for the same seed, and others for another', () => {
    expect(plantedProblem(7, TIGHT)).toEqual(plantedProblem(7, TIGHT))
    expect(plantedProblem(8, TIGHT).problem.pieces).not.toEqual(plantedProblem(7, TIGHT).problem.pieces)
  })
})

/** Looks at the deadline: many times what these problems took when the search was tuned, some seconds' work. */
const STEPS = 100_000

describe('the search', () => {
  it.each([
    [TIGHT, [8, 9, 11, 12, 13]],
    [MIDDLING, [1, 2, 5, 10]],
    [ROOMY, [1, 2, 6, 10]],
  ])('finds planted problems by steps counted, %o', (room, seeds) => {
    for (const seed of seeds) {
      const { problem } = plantedProblem(seed, room)
      const lay = answerLay(problem, withinSteps(STEPS))
      expect({ seed, verdict: lay.verdict }).toEqual({ seed, verdict: 'fits' })
      expect(faultsByBoth(problem, lay)).toEqual([])
    }
  })
})

/** A few steps only: what is asked here is the truth of the answers, not how many there are. */
const FEW_STEPS = 2000
const RUNS = randomRuns('planted', 24)

describe('answers to planted problems', () => {
  it(
    'are never a false no, and no lay breaks a rule',
    () => {
      const counts = { fits: 0, cannot: 0, 'not-found': 0 }
      for (let k = 0; k < RUNS.count; k++) {
        const { problem } = plantedProblem(1000 + k, [TIGHT, MIDDLING, ROOMY][k % 3] as Room)
        const lay = answerLay(problem, withinSteps(FEW_STEPS, 1 + k))
        counts[lay.verdict]++
        expect({ k, verdict: lay.verdict }).not.toEqual({ k, verdict: 'cannot' })
        if (lay.verdict === 'fits')
          expect({ k, faults: faultsByBoth(problem, lay) }).toEqual({ k, faults: [] })
        RUNS.tick(counts)
      }
      expect(counts.fits).toBeGreaterThan(RUNS.count / 3)
    },
    1000 * RUNS.count + 60_000,
  )
})
