import { describe, expect, it } from 'vitest'
import { donorProblem } from '../../../../src/core/planning/donors/asked.ts'
import { splitOver } from '../../../../src/core/planning/donors/blocking.ts'
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
    const rows = [...yieldsOf(cloth('sheet', 300, 150), [bag, cap], 0, UNHURRIED)]
    expect(rows.map(({ pattern, size, verdict }) => [pattern, size, verdict])).toEqual([
      ['cap', 'S', 'fits'],
      ['cap', 'M', 'fits'],
      ['bag', 'M', 'fits'],
      ['cap', 'L', 'cannot'],
    ])
  })

  it('goes on from the rows it has told', () => {
    const all = [...yieldsOf(cloth('sheet', 300, 150), [bag, cap], 0, UNHURRIED)]
    const rest = [...yieldsOf(cloth('sheet', 300, 150), [bag, cap], 0, UNHURRIED, all.slice(0, 2))]
    expect(rest.map(({ pattern, size }) => [pattern, size])).toEqual(
      all.slice(2).map(({ pattern, size }) => [pattern, size]),
    )
  })
})
