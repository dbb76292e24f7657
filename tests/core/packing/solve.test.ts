import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../src/core/base/deadline.ts'
import { type PackingProblem, solve } from '../../../src/core/packing/index.ts'
import { exactWays, layFaults, makeItem, makeProblem, rectangle, square } from '../../support/packing.ts'

const clock = () => 0
const search = (problem: PackingProblem, seed = 1) => solve(problem, { seed, deadline: NO_DEADLINE, clock })

function expectFits(problem: PackingProblem): void {
  const answer = search(problem)
  expect(answer.verdict).toBe('fits')
  if (answer.verdict === 'fits') expect(layFaults(problem, answer.placements)).toEqual([])
}

describe('solve', () => {
  it('lays 9 squares of 100 mm exactly into 300 by 300 mm', () => {
    expectFits(makeProblem(square(300), [makeItem('s', square(100), 9, exactWays([0]))]))
  })

  it('lays 8 unit squares round a hole of one in a 3 by 3 square, where no place has room to move', () => {
    const hole = square(100).map(([x, y]) => [x + 100, y + 100] as const)
    expectFits(makeProblem(square(300), [makeItem('s', square(100), 8, exactWays([0]))], [hole]))
  })

  it('keeps the clearance between items but lets them touch the edge', () => {
    const items = [makeItem('s', square(100), 4, exactWays([0]))]
    expectFits({ ...makeProblem(square(205.01), items), clearance: 5 })
  })

  it('gives the same lay for the same seed', () => {
    const items = [
      makeItem('a', rectangle(70, 40), 5, exactWays([0, 90])),
      makeItem('b', square(55), 3, exactWays([0])),
    ]
    const problem = makeProblem(rectangle(200, 170), items)
    expect(search(problem)).toEqual(search(problem))
  })

  it('leaves out an optional item without changing the verdict', () => {
    const extra = { ...makeItem('extra', square(90), 1, exactWays([0])), optional: true }
    const answer = search(makeProblem(square(100), [makeItem('s', square(60), 1, exactWays([0])), extra]))
    expect(answer).toMatchObject({ verdict: 'fits', leftOut: [{ item: 1, copy: 0 }] })
  })
})
