import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../../src/core/base/assertions.ts'
import { NO_DEADLINE } from '../../../../src/core/base/deadline.ts'
import { maximalCliques } from '../../../../src/core/packing/alike/cliques.ts'
import { groupsToSettle } from '../../../../src/core/packing/alike/groups.ts'
import { heldAlike } from '../../../../src/core/packing/alike/restrict.ts'
import { solveAlike } from '../../../../src/core/packing/alike/solve-alike.ts'
import type { Refutation } from '../../../../src/core/packing/answer.ts'
import { checkPacking } from '../../../../src/core/packing/check/check-packing.ts'
import type { Item, PackingProblem, Placement } from '../../../../src/core/packing/problem.ts'
import { recheck } from '../../../../src/core/packing/proof-check/recheck.ts'
import { exactWays, makeItem, makeProblem, rectangle } from '../../../support/packing.ts'

beforeAll(throwOnBrokenInvariants)

const MUCH = 20_000_000
const control = { seed: 1, clock: () => 0, deadline: NO_DEADLINE }
const either = exactWays([0, 90, 180, 270])
const alike = (item: Item, group = 'leg', within = 0): Item => ({ ...item, alike: { group, within } })
const bars = (copies: number, ways = either) => alike(makeItem('bar', rectangle(100, 290), copies, ways))

/** Room for one bar upright and one lying, but not for two of either. */
const ell = makeProblem(
  [
    [0, 0],
    [400, 0],
    [400, 100],
    [100, 100],
    [100, 400],
    [0, 400],
  ],
  [bars(2)],
)

function refutationOf(problem: PackingProblem): Refutation {
  const answer = solveAlike(problem, control)
  if (answer.verdict !== 'cannot') throw new Error(answer.verdict)
  return answer.refutation
}

describe('the greatest sets of what agrees', () => {
  const sets = (nodes: number, linked: (i: number, j: number) => boolean) =>
    maximalCliques(nodes, linked)
      .map((set) => set.join())
      .sort()

  it('are all nodes, each alone, or the pairs of a path', () => {
    expect(sets(3, () => true)).toEqual(['0,1,2'])
    expect(sets(3, () => false)).toEqual(['0', '1', '2'])
    expect(sets(4, (i, j) => Math.abs(i - j) <= 1)).toEqual(['0,1', '1,2', '2,3'])
    expect(sets(0, () => true)).toEqual([])
  })
})

describe('groups that need a choice', () => {
  const choices = (items: readonly Item[], headed = false) => {
    const { regions, ...rest } = makeProblem(rectangle(500, 500), items)
    const problem = { ...rest, regions: regions.map((region) => ({ ...region, headed })) }
    return groupsToSettle(problem).map(({ name, choices: all }) => [
      name,
      all.length,
      all.every((one) => one.settled),
    ])
  }

  it('are those with more than one line, or more than one direction where heads tell', () => {
    expect(choices([bars(2)])).toEqual([['leg', 2, true]])
    expect(choices([bars(2)], true)).toEqual([['leg', 4, true]])
    expect(choices([bars(2, exactWays([0, 180]))])).toEqual([])
    expect(choices([bars(2, exactWays([0, 180]))], true)).toEqual([['leg', 2, true]])
    expect(choices([bars(2, exactWays([0]))], true)).toEqual([])
  })

  it('are none of a single copy, and one that is never settled of what may turn anyhow', () => {
    const anyhow = [{ turn: 0, mirrored: false, tilt: 180 }]
    expect(choices([bars(1)])).toEqual([])
    expect(choices([bars(1, anyhow)])).toEqual([])
    expect(choices([bars(2, anyhow)])).toEqual([['leg', 1, false]])
    expect(choices([bars(1, exactWays([0])), bars(1, anyhow)])).toEqual([['leg', 1, false]])
  })

  it('are none of an item that may lie nowhere', () => {
    expect(choices([{ ...bars(2, []), optional: true }])).toEqual([])
  })
})

describe('the checker', () => {
  const at = (item: number, copy: number, x: number, turn: number): Placement => ({
    item,
    copy,
    region: 0,
    turn,
    mirrored: false,
    x,
    y: 500,
  })
  const field = (headed: boolean, within = 0) => {
    const { regions, ...rest } = makeProblem(rectangle(2000, 1000), [
      alike(makeItem('a', rectangle(100, 100), 2, [{ turn: 0, mirrored: false, tilt: 180 }]), 'leg', within),
    ])
    return { ...rest, regions: regions.map((region) => ({ ...region, headed })) }
  }
  const kinds = (problem: PackingProblem, first: number, second: number) =>
    checkPacking(problem, [at(0, 0, 500, first), at(0, 1, 1500, second)], []).map(({ kind }) => kind)

  it.each([
    [0, 180, false, 0, []],
    [0, 180, true, 0, ['unlike']],
    [0, 90, false, 0, ['unlike']],
    [30, 210, false, 0, []],
    [359, 1, false, 1, []],
    [359, 1.1, false, 1, ['unlike']],
    [179, 1, false, 1, []],
    [179, 1, true, 1, ['unlike']],
    [0, 0.0001, false, 0, ['unlike']],
  ] as const)('%d and %d, headed %s, within %d', (first, second, headed, within, expected) => {
    expect(kinds(field(headed, within), first, second)).toEqual(expected)
  })
})

describe('a refutation of every choice', () => {
  const refutation = refutationOf(ell)
  const { certificate } = refutation
  if (certificate.by !== 'alike') throw new Error(certificate.by)
  const [one, other] = certificate.choices
  const having = (choices: typeof certificate.choices): Refutation => ({
    ...refutation,
    certificate: { by: 'alike', choices },
  })

  it('holds', () => {
    expect(refutation).toMatchObject({ kind: 'alike', items: [0], figures: { choices: 2 } })
    expect(recheck(ell, refutation, MUCH)).toBe('holds')
  })

  it('fails without one of them, or if one has less than all its turns', () => {
    expect(recheck(ell, having([one!]), MUCH)).toBe('fails')
    const less = { ...other!, ways: other!.ways.map((lists) => lists.map((list) => list.slice(1))) }
    expect(recheck(ell, having([one!, less]), MUCH)).toBe('fails')
  })

  it('does not hold where there is a packing after all', () => {
    const wider = makeProblem(rectangle(400, 400), ell.items)
    expect(recheck(wider, refutation, 100_000)).not.toBe('holds')
  })

  it('fails for copies that need not turn alike', () => {
    const free = { ...ell, items: [makeItem('bar', rectangle(100, 290), 2, either)] }
    expect(recheck(free, refutation, MUCH)).toBe('fails')
    const apart = { ...ell, items: [bars(1), { ...bars(1), alike: { group: 'other', within: 0 } }] }
    expect(solveAlike(apart, control).verdict).toBe('fits')
  })

  it('is one for the whole where it needs no choice', () => {
    const small = makeProblem(rectangle(200, 200), [bars(2)])
    expect(refutationOf(small).certificate.by).not.toBe('alike')
  })
})

describe('a lay held as it turns', () => {
  it('has only ways that turn alike, its own among them', () => {
    const problem = makeProblem(rectangle(700, 700), [bars(3)])
    const answer = solveAlike(problem, control)
    if (answer.verdict !== 'fits') throw new Error(answer.verdict)
    const held = heldAlike(problem, answer.placements)
    expect(checkPacking(held, answer.placements, [])).toEqual([])
    expect(groupsToSettle(held)).toEqual([])
    expect(held.items[0]?.ways[0]?.length).toBe(2)
  })

  it('of turns there is no end of, keeps to the one it has', () => {
    const anyhow = [{ turn: 0, mirrored: false, tilt: 180 }]
    const problem = makeProblem(rectangle(900, 900), [
      alike(makeItem('a', rectangle(50, 90), 2, anyhow), 'a', 2),
    ])
    const placements = [33, 216].map((turn, copy): Placement => {
      return { item: 0, copy, region: 0, turn, mirrored: false, x: 300 + 300 * copy, y: 400 }
    })
    const held = heldAlike(problem, placements)
    expect(checkPacking(held, placements, [])).toEqual([])
    expect(held.items[0]?.ways[0]).toEqual([
      { turn: 34.5, mirrored: false, tilt: 2 },
      { turn: 214.5, mirrored: false, tilt: 2 },
    ])
    expect(groupsToSettle(held)).toEqual([])
  })
})
