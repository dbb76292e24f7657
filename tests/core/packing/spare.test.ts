import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../src/core/base/deadline.ts'
import { type PackingProblem, solve, spare } from '../../../src/core/packing/index.ts'
import { hasSpare } from '../../../src/core/packing/spare.ts'
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

  it('takes no account of what may be left out', () => {
    const patch = { ...makeItem('patch', square(15), 1, exactWays([0])), optional: true }
    const items = [patch, makeItem('s', square(100), 1, exactWays([0]))]
    const found = spareOf(makeProblem(square(120), items))
    expect(found).toBeLessThanOrEqual(10)
    expect(found).toBeGreaterThan(9)
  })

  it('is 0 where there is no time for it', () => {
    const problem = makeProblem(square(120), [makeItem('s', square(100), 1, exactWays([0]))])
    const answer = solve(problem, control)
    if (answer.verdict !== 'fits') throw new Error(answer.verdict)
    const passed = { passed: () => true, left: () => 0 }
    expect(spare(problem, answer.placements, { ...control, deadline: passed })).toBe(0)
  })

  it('is at most 64, known to a tenth where it is large', () => {
    const of = (room: number) =>
      spareOf(makeProblem(square(100 + 2 * room), [makeItem('s', square(100), 1, exactWays([0]))]))
    expect(of(200)).toBe(64)
    expect(of(50)).toBeLessThanOrEqual(50)
    expect(of(50)).toBeGreaterThan(45)
  })
})

describe('whether there is so much to spare', () => {
  it('is true up to what there is, and turns items that have to be turned for it', () => {
    // Two of 100 by 50 end to end leave nothing at the sides; side by side, 15 all round.
    const items = [makeItem('a', rectangle(100, 50), 2, exactWays([0, 90]))]
    const problem = makeProblem(rectangle(200, 130), items)
    const endToEnd = [0, 1].map((copy) => {
      const [turn, x, y] = [0, 100 * copy, 0]
      return { item: 0, copy, region: 0, turn, mirrored: false, x, y }
    })
    expect(hasSpare(problem, endToEnd, 14.9, control)).toBe(true)
    expect(hasSpare(problem, endToEnd, 15.1, control)).toBe(false)
  })
})
