import { beforeAll, describe, expect, it, vi } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { polygonOriented } from '../../../src/core/geometry/transform.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import { anyProblem } from '../../support/any-problem.ts'
import { work } from '../../support/counted-work.ts'
import { layProblem, panel, piece, rectangle } from '../../support/lay-problems.ts'
import { randomRuns } from '../../support/random-runs.ts'

// The real things, counted: what a search does is geometry and chance.
vi.mock('../../../src/core/base/random.ts', async (original) => {
  const { countedRandom } = await import('../../support/counted-work.ts')
  return countedRandom(await original())
})
vi.mock('../../../src/core/geometry/clipper.ts', async (original) => {
  const { countedCalls } = await import('../../support/counted-work.ts')
  return countedCalls(await original())
})

beforeAll(throwOnBrokenInvariants)

const RUNS = randomRuns('comes back', 240)
/** How often the deadline is looked at before it has passed: in the first lays, in proofs, among tilted turns, in the spare. */
const LOOKS = [0, 1, 3, 10, 30, 100, 300]

describe('answers', () => {
  it('come back soon after they are told to, whatever rules are in play', () => {
    const verdicts = { fits: 0, cannot: 0, 'not-found': 0 }
    for (let k = 0; k < RUNS.count; k++) {
      work.begin(LOOKS[k % LOOKS.length] as number)
      const { verdict } = answerLay(anyProblem(1 + k), {
        seed: 1 + k,
        clock: work.clock,
        deadline: work.deadline,
      })
      verdicts[verdict]++
      RUNS.tick(verdicts)
    }
    // The problems are neither all easy nor all hopeless.
    expect(Math.min(...Object.values(verdicts))).toBeGreaterThan(RUNS.count / 20)
  })
  it('come back where a piece has room only when it is tilted, and the others are too much', () => {
    const aslant = polygonOriented(rectangle(400, 300), { turn: 3, mirrored: false })
    const belt = piece(rectangle(396, 100), { id: 'belt', tilt: 5 })
    const problem = layProblem([panel(aslant)], [belt, piece(rectangle(134, 185), { tilt: 5, count: 3 })])
    work.begin(400)
    const lay = answerLay(problem, { seed: 1, clock: work.clock, deadline: work.deadline })
    expect(lay.verdict).toBe('not-found')
    expect(lay.leftOut).not.toContain('belt#1')
  })
})
