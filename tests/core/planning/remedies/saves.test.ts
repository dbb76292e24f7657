import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../../src/core/base/assertions.ts'
import { deadlineAfter } from '../../../../src/core/base/deadline.ts'
import type { Garment } from '../../../../src/core/garments/garment.ts'
import { emptyGarment } from '../../../../src/core/garments/starting.ts'
import type { PieceShape } from '../../../../src/core/patterns/pattern.ts'
import type { CheckQuestion } from '../../../../src/core/planning/check.ts'
import type { RemedyStep } from '../../../../src/core/planning/remedies/remedy.ts'
import { isSaved } from '../../../../src/core/planning/remedies/short-of-stretch.ts'
import { solveRemedies } from '../../../../src/core/planning/remedies/solve-remedies.ts'
import {
  answered,
  asking,
  boxPiece,
  measuredCloth,
  patternOf,
  remnant,
  SHEET,
} from '../../../support/check-questions.ts'
import { rectangle, within } from '../../../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

const seamed = (width: number, height: number, allowance: number): { M: PieceShape } => ({
  M: { form: 'box', width, height, allowance },
})

/** 80 × 80 with 4 mm seams and a hem of 40 below. */
const HEMMED: PieceShape = {
  form: 'outline',
  onFold: false,
  points: [
    { at: [0, 0], allowance: 40, use: 'hem' },
    { at: [80, 0], allowance: 4 },
    { at: [80, 80], allowance: 4 },
    { at: [0, 80], allowance: 4 },
  ],
}

/** A triangle 190 wide and 96 high. */
const GUSSET: Readonly<Record<string, PieceShape>> = {
  M: { form: 'triangle', width: 190, height: 96, allowance: 0 },
}

const shirt: Garment = { ...emptyGarment('button-shirt', 'shirt'), opening: 'unpicked' }

/** Questions that cannot be done, each of them saved by one remedy: the step it must be, with its whole cost. */
const CASES: readonly (readonly [string, CheckQuestion, RemedyStep])[] = [
  [
    // 302 mm long in 300: at 10° it is 302 cos 10° + 10 sin 10° = 299.1 high.
    'tilt',
    asking(patternOf([boxPiece('strap', 10, 302)], { mostTilt: 10 }), remnant(rectangle(100, 300))),
    { kind: 'tilt', pieces: ['strap'], from: 0, to: 10 },
  ],
  [
    'quarter-turn',
    asking(patternOf([boxPiece('front', 90, 280), boxPiece('tab', 10, 10)]), remnant(SHEET)),
    { kind: 'quarter-turn', pieces: ['front'] },
  ],
  [
    'narrower-seams',
    asking(
      patternOf([boxPiece('front', 0, 0, { shapes: seamed(280, 88, 10) })], { leastAllowance: 5 }),
      remnant(SHEET),
    ),
    { kind: 'narrower-seams', pieces: ['front'], from: 10, to: 5 },
  ],
  [
    'narrower-hem',
    asking(
      patternOf([boxPiece('front', 0, 0, { shapes: { M: HEMMED } })], { leastHem: 12 }),
      remnant(rectangle(100, 100)),
    ),
    { kind: 'narrower-hem', pieces: ['front'], from: 40, to: 12 },
  ],
  [
    // Cut open, 15 mm of hem are lost all round: 370 × 370.
    'unpick',
    asking(patternOf([boxPiece('front', 390, 390)]), measuredCloth(400, 400, { hemmed: true })),
    { kind: 'unpick', gained: 430 * 430 - 370 * 370 - 4 * 15 * 15 },
  ],
  [
    'mend-flaw',
    asking(patternOf([boxPiece('front', 280, 90)]), {
      ...remnant(SHEET),
      flaws: [
        { id: 'a', panel: 'outline', kind: 'stain', shape: { form: 'box', from: [140, 40], to: [160, 60] } },
      ],
    }),
    { kind: 'mend-flaw', flaw: 'a', panel: 'outline', flawKind: 'stain', area: 400 },
  ],
  [
    'take-off',
    asking(patternOf([boxPiece('half', 240, 440, { copies: 4 })]), shirt),
    { kind: 'take-off', trait: 'chest-pocket' },
  ],
  [
    // 180 along the grain on cloth 100 high that stretches across only; its parts are 90 × 100 each.
    'join',
    asking(
      patternOf([boxPiece('back', 90, 180, { joins: 'across', needs: { across: 10, along: 0 } })]),
      remnant(rectangle(250, 100), {
        stretch: { across: 20, along: 0 },
      }),
    ),
    {
      kind: 'join',
      piece: 'back',
      way: 'across',
      at: 90,
      seam: 90,
      allowance: 10,
      copies: 1,
      parts: ['back/lower', 'back/upper'],
    },
  ],
  [
    // Two triangles of two pieces, heads up, take 380 side by side; one of them head down, less than 300.
    'against-pile',
    asking(
      patternOf([boxPiece('godet', 0, 0, { shapes: GUSSET }), boxPiece('gusset', 0, 0, { shapes: GUSSET })]),
      remnant(SHEET, { surface: 'one-way' }),
    ),
    { kind: 'against-pile', pieces: [expect.stringMatching(/godet|gusset/)] },
  ],
  [
    'other-garment',
    asking(
      patternOf([
        boxPiece('cup', 140, 90, { copies: 2 }),
        boxPiece('cup-lining', 60, 90, { role: 'lining', copies: 2 }),
      ]),
      remnant(SHEET),
    ),
    { kind: 'other-garment', pieces: ['cup-lining'], role: 'lining', copies: 2, area: 2 * 60 * 90 },
  ],
  [
    'other-version',
    asking(
      patternOf([boxPiece('long', 320, 90), boxPiece('short', 200, 90)], {
        versions: [
          { id: 'long', name: 'Long', pieces: ['long'] },
          { id: 'short', name: 'Short', pieces: ['short'] },
        ],
      }),
      remnant(SHEET),
    ),
    { kind: 'other-version', version: 'short', saved: 120 * 90 },
  ],
  [
    'smaller-size',
    asking(
      patternOf(
        [
          boxPiece('front', 0, 0, {
            shapes: { XS: seamed(250, 80, 0).M, S: seamed(290, 90, 0).M, M: seamed(310, 95, 0).M },
          }),
        ],
        { sizes: ['XS', 'S', 'M'] },
      ),
      remnant(SHEET),
    ),
    { kind: 'smaller-size', size: 'S', down: 1 },
  ],
]

describe.each(CASES)('%s', (_, question, step) => {
  it('saves what cannot be done without it, at the cost it names', () => {
    const control = within(5)
    const answer = answered(question, control)
    expect(answer.lay.verdict).toBe('cannot')
    const fitting = [...solveRemedies(question, answer, control)].filter(
      (outcome) => outcome.answer.lay.verdict === 'fits',
    )
    expect(fitting.map(({ remedy }) => remedy.steps)).toEqual([[step]])
    expect(answered(fitting[0]!.remedy.question, within(5)).lay.verdict).toBe('fits')
  })
})

describe('pairs', () => {
  // 85 × 270 with 10 mm seams is 105 × 290: too wide for 100 either way; with 5 mm it is 95 × 280, crosswise.
  const question = asking(
    patternOf([boxPiece('front', 0, 0, { shapes: seamed(85, 270, 10) })], { leastAllowance: 5 }),
    remnant(SHEET),
  )

  it('come when no single remedy helps', () => {
    const answer = answered(question, within(5))
    const fitting = [...solveRemedies(question, answer, within(5))].filter(
      (outcome) => outcome.answer.lay.verdict === 'fits',
    )
    expect(fitting.map(({ remedy }) => remedy.steps.map(({ kind }) => kind))).toEqual([
      ['quarter-turn', 'narrower-seams'],
    ])
  })

  it('do not come when one does', () => {
    const pattern = { ...question.pattern, leastAllowance: 0 }
    const roomy = { ...question, pattern, garment: remnant(rectangle(300, 106)) }
    const outcomes = [...solveRemedies(roomy, answered(roomy, within(5)), within(5))]
    expect(outcomes.map(({ remedy }) => remedy.steps.length)).not.toContain(2)
    expect(outcomes.some(({ answer }) => answer.lay.verdict === 'fits')).toBe(true)
  })
})

describe('cloth that stretches too little', () => {
  const across = (percent: number) => ({ needs: { across: percent, along: 0 } })
  const shapes = Object.fromEntries(
    [80, 90, 100, 110].map((width, k) => [
      'SMLX'[k] as string,
      { form: 'box', width, height: 60, allowance: 0 } as const,
    ]),
  )
  const pattern = patternOf([boxPiece('front', 0, 0, { ...across(50), shapes })], {
    sizes: ['S', 'M', 'L', 'X'],
  })
  const asked = (stretch: number): CheckQuestion => ({
    ...asking(pattern, remnant(SHEET, { stretch: { across: stretch, along: 0 } }), { stretchDoubt: 5 }),
    size: 'S',
  })
  const outcomesOf = (question: CheckQuestion) => {
    const answer = answered(question, within(5))
    return { answer, outcomes: [...solveRemedies(question, answer, within(5))] }
  }

  it('is saved by the larger size that passes the same body', () => {
    // By hand: 80 wide stretched by 50 % passes 120; 90 wide needs 33.3 %, 100 wide 20 %, 110 wide 9.1 %.
    const { answer, outcomes } = outcomesOf(asked(22))
    expect(answer.lay.reason?.kind).toBe('stretch')
    expect(
      outcomes.map(({ remedy, answer: { lay, stretch } }) => [
        remedy.question.size,
        lay.verdict,
        stretch?.standing,
      ]),
    ).toEqual([
      ['L', 'fits', 'barely'],
      ['X', 'fits', 'sure'],
    ])
    const [step] = outcomes[0]?.remedy.steps ?? []
    expect(step).toMatchObject({ kind: 'larger-size', size: 'L', up: 2, body: 'S', pieces: ['front'] })
    expect(step?.kind === 'larger-size' && step.needs.across).toBeCloseTo(20)
  })

  it('is helped by a larger size too where only the doubt lets it pass', () => {
    const { answer, outcomes } = outcomesOf(asked(47))
    expect(answer.stretch?.standing).toBe('just-under')
    expect(outcomes.map(({ remedy }) => remedy.question.size)).toEqual(['M'])
    expect(outcomes.every((outcome) => isSaved(answer, outcome.answer))).toBe(true)
  })

  it('is no reason for a larger size where the room is the trouble, nor where nobody measured', () => {
    const small = { ...asked(60), garment: remnant(rectangle(50, 50), { stretch: { across: 60, along: 0 } }) }
    const kinds = outcomesOf(small).outcomes.flatMap(({ remedy }) => remedy.steps.map(({ kind }) => kind))
    expect(kinds).not.toContain('larger-size')
    const unknown = { ...asked(0), garment: remnant(SHEET) }
    expect(outcomesOf(unknown).outcomes).toEqual([])
  })
})

describe('a quarter turn', () => {
  /** Room for one leg upright and one lying, or for two upright: 100 more on one side. */
  const cloth = (wide: number) =>
    remnant([
      [0, 0],
      [400, 0],
      [400, 100],
      [wide, 100],
      [wide, 400],
      [0, 400],
    ])
  const legs = (more: object) => [
    boxPiece('front', 290, 90, more),
    boxPiece('back', 290, 90, more),
    boxPiece('pocket', 20, 20),
  ]
  const outcome = (wide: number, more: object) => {
    const question = asking(patternOf(legs(more)), cloth(wide))
    expect(answered(question, within(5)).lay.verdict).toBe('cannot')
    const outcomes = [...solveRemedies(question, answered(question, within(5)), within(10))]
    return outcomes.find(({ remedy }) => remedy.steps[0]?.kind === 'quarter-turn')
  }

  it('is of all that is worn side by side, never of a part of it', () => {
    expect(outcome(100, { turnAlike: 'leg' })?.answer.lay).toMatchObject({ verdict: 'cannot' })
    expect(outcome(190, { turnAlike: 'leg' })?.remedy.steps).toEqual([
      { kind: 'quarter-turn', pieces: ['front', 'back'] },
    ])
  })

  it('may be of one piece of several that are not', () => {
    expect(outcome(100, {})?.answer.lay).toMatchObject({ verdict: 'fits' })
  })

  it('is of every copy of a piece', () => {
    const question = asking(
      patternOf([boxPiece('sleeve', 290, 90, { copies: 2, mirror: 'pairs' })]),
      cloth(100),
    )
    const outcomes = [...solveRemedies(question, answered(question, within(5)), within(10))]
    expect(outcomes.filter(({ answer }) => answer.lay.verdict === 'fits')).toEqual([])
  })
})

describe('the stream of outcomes', () => {
  const [, question] = CASES.find(([kind]) => kind === 'smaller-size')!

  it('ends at the deadline, with what is decided by then', () => {
    const clock = () => 0
    const past = { seed: 1, clock, deadline: deadlineAfter(0, clock) }
    expect([...solveRemedies(question, answered(question, within(5)), past)]).toEqual([])
  })

  it('has nothing to say of a question that fits', () => {
    const roomy = { ...question, garment: remnant(rectangle(400, 400)) }
    expect([...solveRemedies(roomy, answered(roomy, within(5)), within(5))]).toEqual([])
  })

  it('tells of what does not help too, each with its place in the order of cost', () => {
    const small = { ...question, garment: remnant(rectangle(100, 100)) }
    const outcomes = [...solveRemedies(small, answered(small, within(5)), within(5))]
    expect(
      outcomes.map(({ rank, remedy, answer }) => [rank, remedy.question.size, answer.lay.verdict]),
    ).toEqual([
      [0, 'S', 'cannot'],
      [1, 'XS', 'cannot'],
    ])
  })
})
