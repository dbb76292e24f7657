import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { COLOUR_MATCHES, colourMatch } from '../../../../src/core/planning/donors/colour.ts'
import { compareKeys, ranked, rankKeys } from '../../../../src/core/planning/donors/rank.ts'
import type { DonorRow } from '../../../../src/core/planning/donors/row.ts'
import { donorsTogether, type RoleRows } from '../../../../src/core/planning/donors/together.ts'

const AREA = 10_000
const otherCloth = { as: 'other', meant: ['woven'], makes: ['knit'], assumed: false } as const
const lay = {
  verdict: 'fits',
  placements: [],
  reason: null,
  leftOut: [],
  spare: null,
  spareIs: 'at-least',
  elapsedMs: 0,
} as const

function row(donor: string, more: Partial<DonorRow> = {}): DonorRow {
  const plain = {
    verdict: 'fits',
    looks: 1,
    heads: 'up',
    lay,
    colour: 'as-wanted',
    price: 5,
    stretch: null,
    match: null,
  } as const
  return { ...plain, donor, waste: 0, spoils: 0, missing: 0, ...more }
}

describe('the order of donors', () => {
  it('goes by verdict, colour, waste, price and good cloth spoilt, in this order', () => {
    const worse: readonly Partial<DonorRow>[] = [
      { verdict: 'cannot' },
      { match: otherCloth },
      { stretch: 'unmeasured' },
      { stretch: 'just-under' },
      { stretch: 'barely' },
      { colour: 'other' },
      { waste: 9000 },
      { price: 9 },
      { spoils: 700 },
    ]
    worse.forEach((first, i) => {
      for (const second of worse.slice(i + 1)) {
        const order = ranked([row('first', first), row('second', second)], AREA).map(({ donor }) => donor)
        expect(order).toEqual(['second', 'first'])
      }
    })
  })

  it('takes waste that hardly differs for the same, so that the price decides', () => {
    const rows = [row('dear', { waste: 100, price: 9 }), row('cheap', { waste: 900, price: 1 })]
    expect(ranked(rows, AREA)[0]?.donor).toBe('cheap')
    expect(ranked([row('a', { waste: 100 }), row('b', { waste: 90 })], AREA)[0]?.donor).toBe('b')
  })

  it('matches colours in free words', () => {
    expect(colourMatch('dark navy blue', 'navy')).toBe('as-wanted')
    expect(colourMatch('Écru', 'black, écru')).toBe('as-wanted')
    expect(colourMatch('red', '')).toBe('as-wanted')
    expect(colourMatch('', 'red')).toBe('unknown')
    expect(colourMatch('navy', 'dark navy')).toBe('other')
    expect(colourMatch('covered', 'red')).toBe('other')
  })
})

const anyRow = (donor: string) =>
  fc
    .record({
      verdict: fc.constantFrom<DonorRow['verdict']>('fits', 'fits', 'cannot', 'undecided'),
      colour: fc.constantFrom(...COLOUR_MATCHES),
      waste: fc.integer({ min: 0, max: 20_000 }),
      price: fc.option(fc.integer({ min: 0, max: 9 })),
      spoils: fc.integer({ min: 0, max: 99 }),
    })
    .map((more) => row(donor, more))

const donors = ['a', 'b', 'c', 'd', 'e']
const anyRoles = fc.tuple(
  ...['main', 'lining', 'mesh'].map((role) =>
    fc.tuple(...donors.map(anyRow)).map((rows): RoleRows => ({ role, area: AREA, rows })),
  ),
)

/** Every way to give each role one of the donors that fit it or none, no donor twice. */
function everyChoice(roles: readonly RoleRows[]): { rows: readonly DonorRow[]; open: number }[] {
  const [first, ...rest] = roles
  if (!first) return [{ rows: [], open: 0 }]
  return everyChoice(rest).flatMap(({ rows, open }) => [
    { rows, open: open + 1 },
    ...first.rows
      .filter(({ verdict, donor }) => verdict === 'fits' && !rows.some((other) => other.donor === donor))
      .map((own) => ({ rows: [own, ...rows], open })),
  ])
}

function total(rows: readonly DonorRow[]): readonly number[] {
  const keys = rows.map((one) => rankKeys(one, AREA))
  return (keys[0] ?? []).map((_, i) => keys.reduce((sum, list) => sum + (list[i] as number), 0))
}

describe('several donors together', () => {
  it('proposes first what no other choice of donors betters (every choice compared)', () => {
    fc.assert(
      fc.property(anyRoles, (roles) => {
        const all = everyChoice(roles)
        const fewest = Math.min(...all.map(({ open }) => open))
        const [best] = donorsTogether(roles)
        if (fewest === roles.length) return expect(best).toBeUndefined()
        expect(best?.open).toHaveLength(fewest)
        const chosen = best?.parts.map((part) => part.row) ?? []
        expect(new Set(chosen.map(({ donor }) => donor)).size).toBe(chosen.length)
        for (const other of all.filter(({ open }) => open === fewest))
          expect(compareKeys(total(chosen), total(other.rows))).toBeLessThanOrEqual(0)
      }),
      { numRuns: 200 },
    )
  })
})
