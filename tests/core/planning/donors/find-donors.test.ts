import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { donorProblem } from '../../../../src/core/planning/donors/asked.ts'
import type { Donor } from '../../../../src/core/planning/donors/donor.ts'
import { findDonors } from '../../../../src/core/planning/donors/find-donors.ts'
import { ranked } from '../../../../src/core/planning/donors/rank.ts'
import type { DonorRow } from '../../../../src/core/planning/donors/row.ts'
import { writeProblem } from '../../../../src/readers/problem-file/write-problem.ts'
import { boxPiece, patternOf } from '../../../support/check-questions.ts'
import { asked, cloth, counted, donor, UNHURRIED } from '../../../support/donors.ts'
import { layFaults, type ProblemFile } from '../../../support/lay-checker.ts'
import { panel, rectangle } from '../../../support/lay-problems.ts'

const twoBoxes = asked(patternOf([boxPiece('box', 100, 60, { copies: 2 })]))

function last(rows: Iterable<DonorRow>): Map<string, DonorRow> {
  return new Map([...rows].map((row) => [row.donor, row]))
}

describe('donors for a pattern', () => {
  it('gives every donor a row, and each row of a lay a lay that the second checker passes', () => {
    const size = fc.integer({ min: 40, max: 400 })
    const stretch = fc.constantFrom(null, { across: 10, along: 10 }, { across: 60, along: 60 })
    const surface = fc.constantFrom('plain' as const, 'one-way' as const)
    const drawn = fc.array(fc.tuple(size, size, size, stretch, surface), { minLength: 1, maxLength: 6 })
    const question = asked(
      patternOf([
        boxPiece('front', 120, 90, { copies: 2, mirror: 'pairs', needs: { across: 20, along: 0 } }),
        boxPiece('band', 200, 30, { grain: 'either' }),
        boxPiece('pocket', 50, 50, { optional: true }),
      ]),
      { clearance: 3 },
    )
    fc.assert(
      fc.property(drawn, (list) => {
        const donors = list.map(([width, height, side, has, nap], i) =>
          donor(`${i}`, [
            panel(rectangle(width, height), {
              id: 'a',
              stretch: has,
              surface: nap,
              flaws: [rectangle(9, 9, 30, 5)],
            }),
            panel(rectangle(side, side), { id: 'b', stretch: has, surface: nap }),
          ]),
        )
        const rows = last(findDonors(question, donors, UNHURRIED))
        expect([...rows.keys()].sort()).toEqual(donors.map(({ id }) => id).sort())
        for (const one of donors) {
          const row = rows.get(one.id) as DonorRow
          const problem = donorProblem(question, one, row.heads)
          if (row.verdict !== 'cannot')
            expect(layFaults(writeProblem(problem) as ProblemFile, row.lay as never)).toEqual([])
          expect(row.missing > 0).toBe(row.verdict !== 'fits')
        }
      }),
      { numRuns: 40 },
    )
  })

  it('tells the likeliest of the first few donors first, whatever their order', () => {
    const donors = [cloth('small', 90, 90), cloth('vast', 900, 900), cloth('enough', 130, 130)]
    const order = [...findDonors(twoBoxes, donors, UNHURRIED)].map((row) => row.donor)
    expect(order).toEqual(['enough', 'vast', 'small'])
  })

  it('makes no panels of later donors before the first rows are told', () => {
    let made = 0
    function* endless(): Generator<Donor, void> {
      for (;;) yield cloth(`${made++}`, 200, 200)
    }
    const rows = findDonors(twoBoxes, endless(), UNHURRIED)
    expect(rows.next().value).toMatchObject({ verdict: 'fits' })
    expect(made).toBeLessThan(20)
  })

  it('glances at all before it looks longer at any, and calls nothing not found before the last look', () => {
    // Nine boxes that may turn anyhow are seldom laid at once where there is hardly any room.
    const hard = asked(
      patternOf([
        boxPiece('a', 70, 31, { copies: 5, grain: 'any' }),
        boxPiece('b', 41, 37, { copies: 4, grain: 'any' }),
      ]),
    )
    const donors = [132, 133, 134, 400].map((side) => cloth(`${side}`, side, side))
    const rows = [...findDonors(hard, donors, { ...counted(100_000, [40, 80]) })]
    const firsts = rows.slice(0, donors.length)
    expect(new Set(firsts.map((row) => row.donor)).size).toBe(donors.length)
    expect(firsts.every(({ looks, verdict }) => looks === 1 && verdict !== 'not-found')).toBe(true)
    expect(rows.length).toBeGreaterThan(donors.length)
    expect(rows.slice(donors.length).every(({ looks }) => looks > 1)).toBe(true)
    const looks = rows.map((row) => row.looks)
    expect(looks).toEqual([...looks].sort((a, b) => a - b))
    for (const row of rows) if (row.verdict === 'not-found') expect(row.looks).toBe(3)
    expect([...last(rows).values()].some(({ verdict }) => verdict === 'undecided')).toBe(false)
  })

  it('stops at the deadline and goes on from the rows it has told', () => {
    const donors = [1, 2, 3, 4, 5].map((i) => cloth(`${i}`, 100 + 20 * i, 130))
    let stop = false
    const deadline = { passed: () => stop, left: () => (stop ? 0 : Number.POSITIVE_INFINITY) }
    const told: DonorRow[] = []
    for (const row of findDonors(twoBoxes, donors, { ...UNHURRIED, deadline })) {
      told.push(row)
      if (told.length === 2) stop = true
    }
    expect(told).toHaveLength(2)
    const rest = [...findDonors(twoBoxes, donors, UNHURRIED, told)]
    expect(rest).toHaveLength(3)
    const whole = [...findDonors(twoBoxes, donors, UNHURRIED)]
    const plain = (rows: readonly DonorRow[]) =>
      rows.map(({ lay: { elapsedMs: _, ...lay }, ...row }) => ({ ...row, lay }))
    expect(plain([...told, ...rest])).toEqual(plain(whole))
  })

  it('gives a donor the same row whichever others were looked at before', () => {
    const donors = [150, 160, 170, 180, 240].map((side) => cloth(`${side}`, side, 0.8 * side))
    const together = last(findDonors(twoBoxes, donors, UNHURRIED))
    for (const one of donors) {
      const [alone] = findDonors(twoBoxes, [one], UNHURRIED)
      expect(together.get(one.id)).toEqual({
        ...alone,
        lay: { ...alone?.lay, elapsedMs: expect.any(Number) },
      })
    }
  })

  it('keeps off cloth of another role, and off what is reserved', () => {
    const lining = donor('lining', [panel(rectangle(300, 300), { id: 'sheet', cloth: 'lining' })])
    const full = donor('full', [
      panel(rectangle(220, 130), { id: 'sheet', flaws: [rectangle(220, 30, 0, 50)] }),
    ])
    const rows = last(findDonors(twoBoxes, [lining, full], UNHURRIED))
    expect(rows.get('lining')).toMatchObject({ verdict: 'cannot', lay: { reason: { kind: 'cloth' } } })
    expect(rows.get('full')?.verdict).toBe('cannot')
  })

  it('ranks what fits before what does not', () => {
    const donors = [cloth('a', 90, 90), cloth('b', 130, 130), cloth('c', 900, 900)]
    const rows = ranked([...findDonors(twoBoxes, donors, UNHURRIED)], twoBoxes.area)
    expect(rows.map((row) => row.donor)).toEqual(['b', 'c', 'a'])
  })
})
