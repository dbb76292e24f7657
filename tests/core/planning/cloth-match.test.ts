import { describe, expect, it } from 'vitest'
import type { ClothMake } from '../../../src/core/base/terms.ts'
import type { Cloth } from '../../../src/core/garments/garment.ts'
import type { KindId } from '../../../src/core/garments/kind.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { clothMatch } from '../../../src/core/planning/cloth-match.ts'
import { donorOf } from '../../../src/core/planning/donors/donor.ts'
import { findDonors } from '../../../src/core/planning/donors/find-donors.ts'
import { ranked } from '../../../src/core/planning/donors/rank.ts'
import { standing } from '../../../src/core/planning/doubt.ts'
import { demoPatterns } from '../../../src/terminal/bench/demo.ts'
import { answered, asking, boxPiece, patternOf, remnant, SHEET } from '../../support/check-questions.ts'
import { asked, UNHURRIED } from '../../support/donors.ts'
import { within } from '../../support/lay-problems.ts'

const HAT: readonly ClothMake[] = ['woven']

function garment(kind: KindId, cloth: Partial<Cloth> = {}) {
  const empty = emptyGarment(kind, kind)
  return { ...empty, cloth: { ...empty.cloth, ...cloth } }
}

describe('what a pattern is for, against what a cloth is', () => {
  it.each<[string, readonly ClothMake[], ReturnType<typeof garment>, string, boolean]>([
    ['a jersey dress for a hat of woven cloth', HAT, garment('dress', { structure: 'knit' }), 'other', false],
    ['a woven dress', HAT, garment('dress', { structure: 'woven' }), 'meant', false],
    ['a T-shirt of which nothing is said', HAT, garment('t-shirt'), 'other', true],
    ['the same for a knit top', ['knit'], garment('t-shirt'), 'meant', true],
    ['a shirt of which nothing is said', ['knit'], garment('button-shirt'), 'other', true],
    [
      'a shirt that is said to be knit',
      ['knit'],
      garment('button-shirt', { structure: 'knit' }),
      'meant',
      false,
    ],
    ['a remnant of which nothing is said', HAT, garment('cloth'), 'not-said', false],
    [
      'a woven that stretches, as stretch woven',
      ['stretch-woven'],
      garment('trousers', { structure: 'woven', stretch: { across: 20, along: 0 } }),
      'meant',
      false,
    ],
    [
      'a woven that does not',
      ['stretch-woven'],
      garment('trousers', { structure: 'woven', stretch: { across: 3, along: 0 } }),
      'other',
      false,
    ],
    [
      'stretch woven for firm woven',
      HAT,
      garment('trousers', { structure: 'stretch-woven' }),
      'other',
      false,
    ],
  ])('%s', (_, cloths, given, as, assumed) => {
    expect(clothMatch({ cloths }, given)).toMatchObject({ as, assumed })
  })

  it('is no question where the pattern does not say', () => {
    expect(clothMatch({}, garment('dress', { structure: 'knit' }))).toBeNull()
    expect(clothMatch({ cloths: [] }, garment('dress', { structure: 'knit' }))).toBeNull()
  })
})

describe('a mismatch', () => {
  const hat = patternOf([boxPiece('brim', 50, 50)], { cloths: HAT })

  it('comes with the answer, which stays what geometry makes it, and is never sure', () => {
    const knit = remnant(SHEET, { structure: 'knit' })
    const answer = answered(asking(hat, knit), within(5))
    expect([answer.lay.verdict, answer.match?.as]).toEqual(['fits', 'other'])
    expect(standing(answer, knit, 0)).toBe('fits-if-cloth-serves')
    const large = answered(asking(patternOf([boxPiece('brim', 900, 50)], { cloths: HAT }), knit), within(5))
    expect([large.lay.verdict, large.match?.as]).toEqual(['cannot', 'other'])
  })

  it('leaves what matches as sure as it was, and says what is not known', () => {
    const woven = remnant(SHEET, { structure: 'woven' })
    expect(standing(answered(asking(hat, woven), within(5)), woven, 0)).toBe('fits-with-room')
    const unknown = answered(asking(hat, remnant(SHEET)), within(5))
    expect(unknown.match?.as).toBe('not-said')
    expect(standing(unknown, woven, 0)).toBe('fits-with-room')
  })

  it('ranks donors after those that match and those of which nothing is said, and leaves none out', () => {
    const cloths = ['knit', 'woven', 'unknown'] as const
    const donors = cloths.map((structure, k) =>
      // The one that matches least has the least waste.
      donorOf(
        {
          ...remnant(
            [
              [0, 0],
              [100 + k, 0],
              [100 + k, 100],
              [0, 100],
            ],
            { structure },
          ),
          id: structure,
        },
        0,
      ),
    )
    const question = asked(hat)
    const rows = [...findDonors(question, donors, UNHURRIED)].filter(({ verdict }) => verdict === 'fits')
    expect(ranked(rows, question.area).map(({ donor, match }) => [donor, match?.as])).toEqual([
      ['woven', 'meant'],
      ['unknown', 'not-said'],
      ['knit', 'other'],
    ])
  })
})

it('every shipped pattern says what it is for', () => {
  for (const { id, cloths } of demoPatterns()) expect(cloths?.length, id).toBeGreaterThan(0)
})
