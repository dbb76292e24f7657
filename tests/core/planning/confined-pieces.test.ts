import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'
import { cutSkirts, randomSkirts } from '../../support/confined.ts'
import { type LayFile, layFaults, type ProblemFile } from '../../support/lay-checker.ts'
import { withinSteps } from '../../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

describe('pieces that sit and pieces that show a motif', () => {
  it('are laid as a separate checker wants it, whatever the verdict', () => {
    const verdicts = { fits: 0, cannot: 0, 'not-found': 0 }
    fc.assert(
      fc.property(randomSkirts, (problem) => {
        const lay = answerLay(problem, withinSteps(2000))
        verdicts[lay.verdict]++
        expect(layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
      }),
      { numRuns: 60, seed: 1 },
    )
    // The problems are neither all easy nor all hopeless.
    expect(verdicts.fits).toBeGreaterThan(15)
    expect(verdicts.cannot).toBeGreaterThan(5)
  })

  it('are never refuted where they were cut from the panel, with nothing to spare', () => {
    let fits = 0
    fc.assert(
      fc.property(cutSkirts, (problem) => {
        const lay = answerLay(problem, withinSteps(2000))
        expect(lay.verdict).not.toBe('cannot')
        if (lay.verdict === 'fits') fits++
        expect(layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
      }),
      { numRuns: 60, seed: 2 },
    )
    // Tight as they are, nearly all are found.
    expect(fits).toBeGreaterThan(40)
  })
})
