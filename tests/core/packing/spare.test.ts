import { describe, expect, it } from 'vitest'
import { NO_DEADLINE } from '../../../src/core/base/deadline.ts'
import { checkPacking } from '../../../src/core/packing/check/check-packing.ts'
import {
  type Item,
  type PackingProblem,
  type Placement,
  solve,
  spare,
} from '../../../src/core/packing/index.ts'
import { insetProblem, placementsInset } from '../../../src/core/packing/inset-problem.ts'
import { exactWays, makeItem, makeProblem, rectangle, square } from '../../support/packing.ts'

const control = { seed: 1, deadline: NO_DEADLINE, clock: () => 0 }
const PASSED = { passed: () => true, left: () => 0 }

function solved(problem: PackingProblem): readonly Placement[] {
  const answer = solve(problem, control)
  if (answer.verdict !== 'fits') throw new Error(answer.verdict)
  return answer.placements
}

/** A search that has all the time it wants comes to its end, and its packing has what it says. */
function spareOf(problem: PackingProblem): number {
  const { inset, ended, placements } = spare(problem, solved(problem), control)
  expect(ended).toBe(true)
  expect(faultsAt(inset ?? 0, problem, placements)).toEqual([])
  return inset as number
}

/** Rules that the needed copies break with every edge moved in so far, by the checker. */
function faultsAt(inset: number, problem: PackingProblem, placements: readonly Placement[]) {
  const items = problem.items.filter(({ optional }) => !optional)
  const needed = placements
    .map((each) => ({ ...each, item: items.indexOf(problem.items[each.item] as Item) }))
    .filter(({ item }) => item >= 0)
  const moved = insetProblem({ ...problem, items }, inset)
  return checkPacking(moved.problem, placementsInset(moved, needed), [])
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

  it('is not known where there is no time for it: never 0', () => {
    const problem = makeProblem(square(120), [makeItem('s', square(100), 1, exactWays([0]))])
    const placements = solved(problem)
    const found = spare(problem, placements, { ...control, deadline: PASSED })
    expect(found).toEqual({ inset: null, ended: false, placements })
  })

  it('is said to be no more than found so far wherever time cuts it short, and then by a packing that has it', () => {
    const problem = makeProblem(rectangle(130, 230), [
      makeItem('a', rectangle(100, 50), 2, exactWays([0, 90])),
    ])
    const placements = solved(problem)
    const whole = spare(problem, placements, control)
    for (let steps = 0; steps < 60; steps++) {
      let left = steps
      const deadline = { passed: () => left-- <= 0, left: () => 1 }
      const { inset, ended, placements: laid } = spare(problem, placements, { ...control, deadline })
      expect(inset ?? 0).toBeLessThanOrEqual(whole.inset as number)
      expect({ steps, ended }).toEqual({ steps, ended: ended && inset === whole.inset })
      expect({ steps, faults: faultsAt(inset ?? 0, problem, laid) }).toEqual({ steps, faults: [] })
    }
  })

  it('is the same every time', () => {
    const problem = makeProblem(rectangle(333, 230), [
      makeItem('a', rectangle(100, 50), 5, exactWays([0, 90])),
    ])
    expect(spare(problem, solved(problem), control)).toEqual(spare(problem, solved(problem), control))
  })

  it('is at most 64, known to a tenth where it is large', () => {
    const of = (room: number) =>
      spareOf(makeProblem(square(100 + 2 * room), [makeItem('s', square(100), 1, exactWays([0]))]))
    expect(of(200)).toBe(64)
    expect(of(50)).toBeLessThanOrEqual(50)
    expect(of(50)).toBeGreaterThan(45)
  })
})

describe('as much to spare as is asked', () => {
  // Two of 100 by 50 end to end leave nothing at the sides; side by side, 15 all round.
  const items = [makeItem('a', rectangle(100, 50), 2, exactWays([0, 90]))]
  const problem = makeProblem(rectangle(200, 130), items)
  const endToEnd = [0, 1].map((copy) => {
    const [turn, x, y] = [0, 100 * copy, 0]
    return { item: 0, copy, region: 0, turn, mirrored: false, x, y }
  })

  it('is enough, with items turned that have to be turned for it', () => {
    const found = spare(problem, endToEnd, { ...control, upTo: 14.9 })
    expect(found).toMatchObject({ inset: 14.9, ended: false })
    expect(faultsAt(14.9, problem, found.placements)).toEqual([])
  })

  it('is measured where there is less', () => {
    const { inset, ended } = spare(problem, endToEnd, { ...control, upTo: 15.1 })
    expect(ended).toBe(true)
    expect(inset).toBeGreaterThan(14)
    expect(inset).toBeLessThanOrEqual(15)
  })
})

describe('copies that may be left out', () => {
  const patch = (side: number) => ({ ...makeItem('patch', square(side), 1, exactWays([0])), optional: true })
  const asked = (side: number, region: number) =>
    makeProblem(square(region), [makeItem('s', square(100), 1, exactWays([0])), patch(side)])

  it('stay if there is more than any doubt with them, and then more may be there', () => {
    const problem = asked(60, 200)
    const found = spare(problem, solved(problem), control)
    expect(found.placements).toHaveLength(2)
    expect(found.inset).toBeGreaterThan(18)
    expect(found).toMatchObject({ ended: false })
  })

  it('go if a doubt hangs on them', () => {
    const problem = asked(40, 150)
    expect(solved(problem)).toHaveLength(2)
    const found = spare(problem, solved(problem), control)
    expect(found.placements).toHaveLength(1)
    expect(found.inset).toBeGreaterThan(24)
  })
})

describe('a packing of a like problem', () => {
  it('gives no less than it had there, even where the search would not get so far', () => {
    const items = [makeItem('a', rectangle(100, 50), 2, exactWays([0, 90]))]
    const problem = makeProblem(rectangle(230, 180), items)
    const known = spare(problem, solved(problem), control)
    const start = { inset: known.inset as number, placements: known.placements }
    const one = { steps: 3 }
    const deadline = { passed: () => one.steps-- <= 0, left: () => 1 }
    const found = spare(problem, solved(problem), { ...control, deadline, starts: [start] })
    expect(found.inset).toBe(known.inset)
    expect(found.placements).toEqual(known.placements)
  })
})
