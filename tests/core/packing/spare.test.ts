import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../src/core/base/deadline.ts'
import { type PackingProblem, solve, spare } from '../../../src/core/packing/index.ts'
import { exactWays, makeItem, makeProblem, rectangle, square } from '../../support/packing.ts'

const control = { seed: 1, deadline: NO_DEADLINE, clock: () => 0 }

function spareOf(problem: PackingProblem): number {
  const answer = solve(problem, control)
  if (answer.verdict !== 'fits') throw new Error(answer.verdict)
  return spare(problem, answer.placements, control)
}

describe('spare', () => {
  it('of one square in a larger one is half the difference, to the precision asked', () => {
    const found = spareOf(makeProblem(square(120), [makeItem('s', square(100), 1, exactWays([0]))]))
    expect(found).toBeLessThanOrEqual(10)
    expect(found).toBeGreaterThan(9)
  })

  it('is 0 when the items fill the region', () => {
    expect(spareOf(makeProblem(square(200), [makeItem('s', square(100), 4, exactWays([0]))]))).toBe(0)
  })

  it('counts the edges of forbidden areas too', () => {
    // A column of 120 between the edge and the area, 20 wider than the item: 10 from either side.
    const area = rectangle(100, 300).map(([x, y]) => [x + 120, y] as const)
    const found = spareOf(
      makeProblem(rectangle(220, 300), [makeItem('s', square(100), 1, exactWays([0]))], [area]),
    )
    expect(found).toBeLessThanOrEqual(10)
    expect(found).toBeGreaterThan(9)
  })

  it('lays the items anew where the lay it starts from leaves none', () => {
    const items = [makeItem('a', rectangle(100, 50), 2, exactWays([0, 90]))]
    expect(spareOf(makeProblem(rectangle(130, 230), items))).toBeGreaterThan(13)
  })
})
