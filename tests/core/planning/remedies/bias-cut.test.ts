import { beforeAll, describe, expect, it } from 'vitest'
import { raglanTop } from '../../../../demo-data/drafting/raglan-top.ts'
import { sportsTop } from '../../../../demo-data/drafting/sports-top.ts'
import { throwOnBrokenInvariants } from '../../../../src/core/base/assertions.ts'
import type { Cloth } from '../../../../src/core/garments/garment.ts'
import type { Pattern } from '../../../../src/core/patterns/pattern.ts'
import type { CheckQuestion } from '../../../../src/core/planning/check.ts'
import { standing } from '../../../../src/core/planning/doubt.ts'
import { remediesFor } from '../../../../src/core/planning/remedies/remedies-for.ts'
import type { Remedy } from '../../../../src/core/planning/remedies/remedy.ts'
import { isSaved } from '../../../../src/core/planning/remedies/short-of-stretch.ts'
import { solveRemedies } from '../../../../src/core/planning/remedies/solve-remedies.ts'
import { answered, asking, boxPiece, patternOf, remnant, SHEET } from '../../../support/check-questions.ts'
import { rectangle, within } from '../../../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

const across = (percent: number) => ({ needs: { across: percent, along: 0 } })

/** A front that needs 20 % and a band, allowed on the bias, that needs 35. */
const BANDED = patternOf([
  boxPiece('front', 80, 80, across(20)),
  boxPiece('band', 90, 20, { ...across(35), biasToo: true }),
])

const cloth = (structure: Cloth['structure'], more: Partial<Cloth> = {}): Partial<Cloth> => ({
  structure,
  stretch: { across: 25, along: 0 },
  ...more,
})

const asked = (
  pattern: Pattern,
  of: Partial<Cloth>,
  more: Partial<CheckQuestion> = { stretchDoubt: 5 },
): CheckQuestion => asking(pattern, remnant(SHEET, of), more)

const isBiasCut = ({ steps }: Remedy) => steps.some(({ kind }) => kind === 'bias-cut')

function offered(question: CheckQuestion): readonly Remedy[] {
  return remediesFor(question, answered(question, within(5))).filter(isBiasCut)
}

/** As much cloth as any of the shipped patterns takes. */
function plenty(pattern: Pattern, of: Partial<Cloth>): CheckQuestion {
  const { sizes, versions } = pattern
  const garment = remnant(rectangle(2000, 2000), of)
  return { ...asking(pattern, garment, { stretchDoubt: 5 }), size: sizes[0]!, version: versions[0]!.id }
}

describe('a band cut on the bias', () => {
  it.each(['woven', 'stretch-woven'] as const)('saves %s cloth that gives the rest enough', (made) => {
    const question = asked(BANDED, cloth(made))
    const answer = answered(question, within(5))
    expect(answer.lay.reason?.kind).toBe('stretch')
    const [outcome] = [...solveRemedies(question, answer, within(5))].filter(({ remedy }) =>
      isBiasCut(remedy),
    )
    expect(outcome?.remedy.steps).toEqual([{ kind: 'bias-cut', pieces: ['band'], needs: 35 }])
    expect(outcome?.answer.lay.verdict).toBe('fits')
    const turns = outcome!.answer.lay.placements.map(({ piece, turn }) => [piece, turn % 90])
    expect(new Map(turns as [string, number][])).toEqual(
      new Map([
        ['front', 0],
        ['band', 45],
      ]),
    )
    expect(isSaved(answer, outcome!.answer)).toBe(true)
  })

  it.each([undefined, 0, 5])('is never sure, for nobody measured it there (doubt %s)', (stretchDoubt) => {
    const question = asked(BANDED, cloth('stretch-woven'), stretchDoubt === undefined ? {} : { stretchDoubt })
    const [remedy] = offered(question)
    const answer = answered(remedy!.question, within(5))
    expect(answer.lay.verdict).toBe('fits')
    expect(answer.stretch).toEqual({
      standing: 'unmeasured',
      piece: 'band',
      needs: { across: 35, along: 0 },
      has: null,
    })
    expect(standing(answer, remedy!.question.garment, 0)).toBe('fits-if-gauge-right')
  })

  it('is counted on cloth of which nothing was said where such garments are woven', () => {
    const garment = { ...remnant(SHEET, cloth('unknown')), kind: 'trousers' as const }
    const question = asking(BANDED, remnant(SHEET, cloth('unknown')), { stretchDoubt: 5 })
    const short = answered(question, within(5))
    expect(remediesFor({ ...question, garment }, short).filter(isBiasCut)).toHaveLength(1)
    expect(remediesFor(question, short).filter(isBiasCut)).toEqual([])
  })

  it('is offered too where only the doubt lets it pass', () => {
    const question = asked(BANDED, cloth('woven', { stretch: { across: 32, along: 0 } }))
    expect(answered(question, within(5)).stretch?.standing).toBe('just-under')
    expect(offered(question)).toHaveLength(1)
  })

  it.each<[string, Pattern, Partial<Cloth>]>([
    ['on a knit', BANDED, cloth('knit')],
    ['against the pile', BANDED, cloth('woven', { surface: 'one-way' })],
    [
      'where a piece is short that may not',
      patternOf([
        boxPiece('front', 80, 80, across(40)),
        boxPiece('band', 90, 20, { ...across(45), biasToo: true }),
      ]),
      cloth('woven'),
    ],
    [
      'where its maker does not allow it',
      patternOf([boxPiece('front', 80, 80), boxPiece('band', 90, 20, across(45))]),
      cloth('woven'),
    ],
    ['where it stretches enough', BANDED, cloth('woven', { stretch: { across: 60, along: 0 } })],
    ['where nobody measured', BANDED, cloth('woven', { stretch: null })],
  ])('is not offered %s', (_, pattern, of) => {
    expect(offered(asked(pattern, of))).toEqual([])
  })

  it('is not said to fit where there is no room for it', () => {
    const question = asking(BANDED, remnant(rectangle(90, 102), cloth('woven')), { stretchDoubt: 5 })
    const outcomes = [...solveRemedies(question, answered(question, within(5)), within(5))]
    const found = outcomes.filter(({ remedy }) => isBiasCut(remedy))
    expect(found).toHaveLength(1)
    expect(found[0]?.answer.lay.verdict).not.toBe('fits')
  })
})

describe('the patterns that come with it', () => {
  it('let the raglan top’s neckband be cut on the bias, and it alone', () => {
    const question = plenty(raglanTop(), cloth('stretch-woven'))
    const answer = answered(question, within(10))
    const [outcome] = [...solveRemedies(question, answer, { ...within(20), spareAsked: 0 })].filter(
      ({ remedy }) => isBiasCut(remedy),
    )
    expect(outcome?.remedy.steps).toEqual([{ kind: 'bias-cut', pieces: ['neckband'], needs: 35 }])
    expect(outcome?.answer.lay.verdict).toBe('fits')
    const bands = outcome!.answer.lay.placements.filter(({ piece }) => piece === 'neckband')
    expect(bands.map(({ turn }) => [45, 135, 225, 315].includes(turn))).toEqual([true])
  })

  it('are not saved by it on a knit, nor where the body of the top is short as well', () => {
    expect(offered(plenty(raglanTop(), cloth('knit')))).toEqual([])
    const short = cloth('stretch-woven', { stretch: { across: 30, along: 25 } })
    expect(offered(plenty(sportsTop(), short))).toEqual([])
    expect(
      sportsTop()
        .pieces.filter(({ biasToo }) => biasToo)
        .map(({ id }) => id),
    ).toEqual(['neck-binding', 'armhole-binding'])
  })
})
