import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { askedOf, donorProblem } from '../../../../src/core/planning/donors/asked.ts'
import type { Donor } from '../../../../src/core/planning/donors/donor.ts'
import { findDonors } from '../../../../src/core/planning/donors/find-donors.ts'
import type { DonorRow } from '../../../../src/core/planning/donors/row.ts'
import { threeWays } from '../../../../src/core/planning/donors/three-ways.ts'
import { writeProblem } from '../../../../src/readers/problem-file/write-problem.ts'
import { boxPiece, patternOf } from '../../../support/check-questions.ts'
import { asked, cloth, donor, UNHURRIED } from '../../../support/donors.ts'
import { layFaults, type ProblemFile } from '../../../support/lay-checker.ts'
import { panel, rectangle } from '../../../support/lay-problems.ts'

const shirt = patternOf([
  boxPiece('front', 300, 400),
  boxPiece('cuff', 100, 60, { copies: 2 }),
  boxPiece('pocket', 80, 80, { optional: true }),
])

describe('one piece asked of a stash', () => {
  it('is looked for alone, in all its copies', () => {
    const donors = [cloth('scrap', 100, 125), cloth('strip', 400, 61), cloth('one only', 105, 65)]
    const rows = [...findDonors(asked(shirt, { piece: 'cuff' }), donors, UNHURRIED)]
    const verdicts = new Map(rows.map((row) => [row.donor, row.verdict]))
    expect(verdicts).toEqual(
      new Map([
        ['scrap', 'fits'],
        ['strip', 'fits'],
        ['one only', 'cannot'],
      ]),
    )
  })

  it('must be there even where the pattern can do without it', () => {
    const [row] = findDonors(asked(shirt, { piece: 'pocket' }), [cloth('too narrow', 70, 900)], UNHURRIED)
    expect(row).toMatchObject({ verdict: 'cannot', missing: 1 })
  })

  it('that the version or role does not need is a fault with its name', () => {
    const question = { pattern: shirt, version: shirt.versions[0]?.id ?? '', size: 'M', clearance: 0 }
    const result = askedOf({ ...question, colours: {}, roles: null, piece: 'collar' })
    expect(result).toMatchObject({ ok: false, faults: [{ field: 'piece' }] })
    if (!result.ok) expect(result.faults[0]?.message).toContain('collar')
  })

  it('fits a cloth just when a plain bound says so, for one copy of a box', () => {
    // One box with its grain goes on a sheet with a flaw at its edge just when it fits beside or above the flaw.
    const side = fc.integer({ min: 20, max: 120 })
    const front = patternOf([boxPiece('a', 60, 80)])
    fc.assert(
      fc.property(
        side,
        side,
        fc.integer({ min: 5, max: 60 }),
        fc.integer({ min: 5, max: 60 }),
        (w, h, fw, fh) => {
          const flaw = rectangle(Math.min(fw, w), Math.min(fh, h))
          const sheet = panel(rectangle(w, h), { id: 'a', flaws: [flaw] })
          const one: Donor = donor('d', [sheet])
          const question = asked(front, { piece: 'a' })
          const [row] = findDonors(question, [one], UNHURRIED) as Iterable<DonorRow>
          const beside = w - fw >= 60 && h >= 80
          const above = h - fh >= 80 && w >= 60
          expect(row?.verdict).toBe(beside || above ? 'fits' : 'cannot')
          if (row?.verdict === 'fits')
            expect(
              layFaults(
                writeProblem(donorProblem(question, one, row.heads)) as ProblemFile,
                row.lay as never,
              ),
            ).toEqual([])
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('three ways', () => {
  const known = { a: 'fits', b: 'cannot', c: 'not-found', d: 'undecided', e: null } as const
  const things = ['a', 'b', 'c', 'd', 'e'] as const

  it('say of what was not found, or not yet looked at, neither yes nor no', () => {
    expect(threeWays(things, (id) => known[id], false)).toEqual({
      yields: ['a'],
      cannot: ['b'],
      open: ['c'],
      waiting: ['d', 'e'],
    })
    expect(threeWays(things, (id) => known[id], true)).toEqual({
      yields: ['a'],
      cannot: ['b'],
      open: ['c', 'd', 'e'],
      waiting: [],
    })
  })

  it('lose nothing', () => {
    const verdict = fc.constantFrom('fits', 'cannot', 'not-found', 'undecided', null)
    fc.assert(
      fc.property(fc.array(verdict), fc.boolean(), (verdicts, isOver) => {
        const list = verdicts.map((_, k) => k)
        const { yields, cannot, open, waiting } = threeWays(list, (k) => verdicts[k] ?? null, isOver)
        expect([...yields, ...cannot, ...open, ...waiting].sort((a, b) => a - b)).toEqual(list)
        expect(cannot.every((k) => verdicts[k] === 'cannot')).toBe(true)
        if (isOver) expect(waiting).toEqual([])
      }),
    )
  })
})
