import { describe, expect, it } from 'vitest'
import { donorProblem } from '../../../../src/core/planning/donors/asked.ts'
import { rankedWays, splitOver } from '../../../../src/core/planning/donors/blocking.ts'
import { findDonors } from '../../../../src/core/planning/donors/find-donors.ts'
import { yieldsOf } from '../../../../src/core/planning/donors/yields.ts'
import { writeProblem } from '../../../../src/readers/problem-file/write-problem.ts'
import { boxPiece, patternOf } from '../../../support/check-questions.ts'
import { asked, cloth, UNHURRIED } from '../../../support/donors.ts'
import { layFaults, type ProblemFile } from '../../../support/lay-checker.ts'

describe('one role from several cloths', () => {
  const four = asked(patternOf([boxPiece('block', 100, 100, { copies: 4 })]))
  const small = ['a', 'b', 'c'].map((id) => cloth(id, 210, 110))

  it('shares copies out where no cloth has room for all, and every share is a sound lay', () => {
    const rows = [...findDonors(four, small, UNHURRIED)]
    expect(rows.every(({ verdict }) => verdict === 'cannot')).toBe(true)
    const [shares] = splitOver(four, small, rows, UNHURRIED)
    expect(shares).toHaveLength(2)
    const copies =
      shares?.flatMap(({ placements }) => placements.map(({ piece, copy }) => `${piece}#${copy}`)) ?? []
    expect([...copies].sort()).toEqual(['block#1', 'block#2', 'block#3', 'block#4'])
    for (const { donor, heads, placements } of shares ?? []) {
      const own = small.find(({ id }) => id === donor)
      if (!own) throw new Error(donor)
      const there = placements.map(({ piece, copy }) => `${piece}#${copy}`)
      const leftOut = copies.filter((copy) => !there.includes(copy))
      const lay = { verdict: 'not-found', placements: [...placements], leftOut }
      expect(layFaults(writeProblem(donorProblem(four, own, heads)) as ProblemFile, lay)).toEqual([])
    }
  })

  it('takes cloths of the colours wanted before larger ones, and says what each share costs', () => {
    const question = asked(patternOf([boxPiece('block', 100, 100, { copies: 4 })]), {
      colours: { main: 'blue' },
    })
    const reds = ['r', 's'].map((id) => cloth(id, 250, 130, { colour: 'red', price: 1 }))
    const blues = ['a', 'b'].map((id) => cloth(id, 210, 110, { colour: 'sky blue', price: 4 }))
    const donors = [...reds, ...blues]
    const [shares] = splitOver(question, donors, [...findDonors(question, donors, UNHURRIED)], UNHURRIED)
    expect(shares?.map(({ donor }) => donor).sort()).toEqual(['a', 'b'])
    // Two of the four blocks lie on each: 210 × 110 less 2 × 100 × 100, give or take 0.01 mm along their edges.
    for (const share of shares ?? []) {
      expect(share).toMatchObject({ colour: 'as-wanted', price: 4 })
      expect(Math.abs(share.waste - 3100)).toBeLessThan(8)
    }
  })

  it('puts the ways in the order that single donors have: colour, waste, price, good cloth spoilt', () => {
    const share = { colour: 'as-wanted', price: 5, waste: 0, spoils: 0, stretch: null, match: null } as const
    const worse = [{ colour: 'other' as const }, { waste: 90_000 }, { price: 9 }, { spoils: 800 }]
    worse.forEach((first, i) => {
      for (const second of worse.slice(i + 1)) {
        const ways = [
          [share, { ...share, ...first }],
          [share, { ...share, ...second }],
        ]
        expect(rankedWays(ways, 40_000)).toEqual([ways[1], ways[0]])
      }
    })
  })

  it('takes a third cloth only when two will not do', () => {
    const six = asked(patternOf([boxPiece('block', 100, 100, { copies: 6 })]))
    const rows = [...findDonors(six, small, UNHURRIED)]
    expect([...splitOver(six, small, rows, UNHURRIED)].map((shares) => shares.length)).toEqual([3])
  })
})

describe('what one donor would yield', () => {
  const shapes = (side: number) => ({ form: 'box', width: side, height: side, allowance: 0 }) as const
  const sizes = ['S', 'M', 'L']
  const cap = {
    ...patternOf([boxPiece('crown', 1, 1, { shapes: { S: shapes(80), M: shapes(140), L: shapes(210) } })]),
    id: 'cap',
    sizes,
  }
  const bag = { ...patternOf([boxPiece('side', 120, 120, { copies: 2 })]), id: 'bag' }

  it('tells every size and version of every pattern, the likeliest first', () => {
    const rows = [...yieldsOf(cloth('sheet', 300, 150), [bag, cap], { clearance: 0 }, UNHURRIED)]
    expect(rows.map(({ pattern, size, verdict }) => [pattern, size, verdict])).toEqual([
      ['cap', 'S', 'fits'],
      ['cap', 'M', 'fits'],
      ['bag', 'M', 'fits'],
      ['cap', 'L', 'cannot'],
    ])
  })

  it('goes on from the rows it has told', () => {
    const all = [...yieldsOf(cloth('sheet', 300, 150), [bag, cap], { clearance: 0 }, UNHURRIED)]
    const rest = [
      ...yieldsOf(cloth('sheet', 300, 150), [bag, cap], { clearance: 0 }, UNHURRIED, all.slice(0, 2)),
    ]
    expect(rest.map(({ pattern, size }) => [pattern, size])).toEqual(
      all.slice(2).map(({ pattern, size }) => [pattern, size]),
    )
  })
})
