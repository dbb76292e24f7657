import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { readProblem } from '../../../src/readers/problem-file/read-problem.ts'
import { latticeFits, latticeProblems } from '../../support/lattice.ts'
import { type LayFile, layFaults } from '../../support/lay-checker.ts'
import { within } from '../../support/lay-problems.ts'
import { randomRuns } from '../../support/random-runs.ts'

beforeAll(throwOnBrokenInvariants)

const RUNS = randomRuns('squared paper', 2000)
const SECONDS = 0.03

describe('random problems on squared paper', () => {
  // The truth is known by exhaustion (support/lattice.ts), every lay is checked by JTS (support/lay-checker.ts).
  it(
    'never get a false yes or a false no',
    () => {
      const counts = { fits: 0, cannot: 0, 'not-found': 0 }
      fc.assert(
        fc.property(latticeProblems, (file) => {
          const problem = readProblem(file)
          if (!problem.ok) throw new Error(JSON.stringify(problem.faults))
          const lay = answerLay(problem.value, within(SECONDS))
          counts[lay.verdict]++
          expect(layFaults(file, writeLayFile(lay) as LayFile)).toEqual([])
          const truth = latticeFits(file)
          if (lay.verdict === 'fits') expect(truth).toBe(true)
          if (lay.verdict === 'cannot') expect(truth).toBe(false)
          RUNS.tick(counts)
        }),
        { numRuns: RUNS.count },
      )
      expect(Math.min(counts.fits, counts.cannot)).toBeGreaterThan(RUNS.count / 10)
    },
    100 * RUNS.count + 60_000,
  )
})
