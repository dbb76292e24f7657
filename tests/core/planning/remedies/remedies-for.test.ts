import { describe, expect, it } from 'vitest'
import { allDrafts } from '../../../../demo-data/drafting/all.ts'
import type { Garment } from '../../../../src/core/garments/garment.ts'
import { emptyGarment } from '../../../../src/core/garments/starting.ts'
import { polygonArea } from '../../../../src/core/geometry/index.ts'
import { removeSize } from '../../../../src/core/patterns/new-pattern.ts'
import type { Pattern } from '../../../../src/core/patterns/pattern.ts'
import { patternFaults } from '../../../../src/core/patterns/pattern-faults.ts'
import type { CheckAnswer, CheckQuestion } from '../../../../src/core/planning/check.ts'
import { layProblemFor } from '../../../../src/core/planning/check-problem.ts'
import { askedPieces, cutArea, sum } from '../../../../src/core/planning/remedies/change.ts'
import { pairsFor, remediesFor } from '../../../../src/core/planning/remedies/remedies-for.ts'
import type { RemedyKind, RemedyStep } from '../../../../src/core/planning/remedies/remedy.ts'
import { readProblem } from '../../../../src/readers/problem-file/read-problem.ts'
import { writeProblem } from '../../../../src/readers/problem-file/write-problem.ts'
import { asking, boxPiece, patternOf, remnant, SHEET, undecided } from '../../../support/check-questions.ts'
import { rectangle } from '../../../support/lay-problems.ts'

/** A garment on which every remedy has something to change. */
const SHIRT: Garment = {
  ...emptyGarment('button-shirt', 'shirt'),
  name: 'Shirt',
  cloth: {
    ...emptyGarment('button-shirt', 'shirt').cloth,
    stretch: { across: 60, along: 60 },
    surface: 'one-way',
  },
  flaws: [
    { id: 'small', panel: 'back', kind: 'hole', shape: { form: 'round', centre: [200, 200], radius: 5 } },
    { id: 'large', panel: 'back', kind: 'stain', shape: { form: 'round', centre: [100, 300], radius: 20 } },
  ],
}

function questions(): readonly CheckQuestion[] {
  // Three sizes are enough: the largest is asked, and two are smaller.
  const short = (pattern: Pattern) => pattern.sizes.slice(0, -3).reduce(removeSize, pattern)
  return allDrafts()
    .map(short)
    .flatMap((pattern) =>
      pattern.versions.map(({ id }) => ({
        ...asking(pattern, SHIRT),
        version: id,
        size: pattern.sizes.at(-1) as string,
      })),
    )
}

function areaOf(question: CheckQuestion): number {
  return sum(
    askedPieces(question)
      .filter(({ piece }) => !piece.optional)
      .map(cutArea),
  )
}

describe('remedies for the shipped patterns', () => {
  const proposed = questions().map((question) => ({
    question,
    remedies: remediesFor(question, undecided(question)),
    pairs: pairsFor(question, undecided(question)),
  }))

  it('cover every kind between them', () => {
    const kinds = new Set(
      proposed.flatMap(({ remedies }) => remedies.flatMap(({ steps }) => steps.map(({ kind }) => kind))),
    )
    const all: readonly RemedyKind[] = [
      'tilt',
      'narrower-seams',
      'narrower-hem',
      'own-hem',
      'unpick',
      'mend-flaw',
      'take-off',
      'join',
      'against-pile',
      'other-garment',
      'other-version',
      'smaller-size',
    ]
    // Quarter turns are of no use on a pile.
    expect([...kinds].sort()).toEqual([...all].sort())
  })

  it('are right questions: no faults in any size, and a problem that the gate for files takes', () => {
    for (const { remedies, pairs } of proposed) {
      for (const { question } of [...remedies, ...pairs]) {
        expect(patternFaults(question.pattern)).toEqual([])
        const problem = layProblemFor(question)
        expect(problem.ok).toBe(true)
        if (problem.ok) expect(readProblem(writeProblem(problem.value))).toMatchObject({ ok: true })
      }
    }
  })

  it('come cheapest first and are not too many', () => {
    for (const { remedies, pairs } of proposed) {
      const kinds = remedies.map(({ steps }) => steps[0]?.kind as RemedyKind)
      expect(kinds).toEqual(
        [...kinds].sort(
          (a, b) => ORDER.findIndex((one) => one.includes(a)) - ORDER.findIndex((one) => one.includes(b)),
        ),
      )
      expect(remedies.length).toBeLessThan(40)
      expect(pairs.length).toBeLessThanOrEqual(10)
      for (const { steps } of pairs) expect(new Set(steps.map(({ kind }) => kind)).size).toBe(2)
    }
  })

  it('take no more cloth where they say that they take less', () => {
    for (const { question, remedies } of proposed) {
      for (const { steps, question: changed } of remedies) {
        for (const step of steps) expectSaved(step, areaOf(question) - areaOf(changed))
      }
    }
  })
})

const ORDER: readonly (readonly RemedyKind[])[] = [
  ['tilt'],
  ['quarter-turn'],
  ['narrower-seams'],
  ['narrower-hem'],
  ['own-hem'],
  ['unpick'],
  ['mend-flaw', 'take-off'],
  ['join'],
  ['against-pile'],
  ['other-garment'],
  ['other-version'],
  ['smaller-size'],
]

/** `saved`: area of pieces that the step takes out of the question. */
function expectSaved(step: RemedyStep, saved: number): void {
  if (step.kind === 'other-garment') expect(step.area).toBeCloseTo(saved, 3)
  else if (step.kind === 'other-version') expect(step.saved).toBeCloseTo(saved, 3)
  else if (['smaller-size', 'narrower-seams', 'narrower-hem'].includes(step.kind))
    expect(saved).toBeGreaterThanOrEqual(0)
  else if (step.kind === 'join') {
    // Both parts are wider by the allowance along the seam; slanted sides make that more or less.
    const added = step.copies * step.seam * step.allowance * 2
    expect(-saved / added).toBeGreaterThan(0.8)
    expect(-saved / added).toBeLessThan(1.2)
  } else expect(saved).toBe(0)
}

describe('narrower seams', () => {
  const zipped = (fixed: boolean): Pattern['pieces'][number] =>
    boxPiece('gore', 0, 0, {
      shapes: {
        M: {
          form: 'outline',
          onFold: false,
          points: [
            { at: [0, 0], allowance: 5 },
            { at: [80, 0], allowance: 15, ...(fixed && { fixed }) },
            { at: [80, 200], allowance: 5 },
            { at: [0, 200], allowance: 5 },
          ],
        },
      },
    })
  const kinds = (fixed: boolean) => {
    const question = asking(patternOf([zipped(fixed)], { leastAllowance: 5 }), remnant(SHEET))
    return remediesFor(question, undecided(question)).flatMap(({ steps }) => steps.map(({ kind }) => kind))
  }

  it('leave the seam of a zip alone', () => {
    expect(kinds(false)).toContain('narrower-seams')
    expect(kinds(true)).not.toContain('narrower-seams')
  })
})

describe('cost figures', () => {
  it('of flaws: the area, the largest first', () => {
    const question = questions()[0] as CheckQuestion
    const mended = remediesFor(question, undecided(question)).flatMap(({ steps }) =>
      steps.filter((step) => step.kind === 'mend-flaw'),
    )
    expect(mended.map(({ flaw }) => flaw)).toEqual(['large', 'small'])
    // A disc drawn round the circle of radius 20.
    expect(mended[0]?.area).toBeGreaterThanOrEqual(Math.PI * 400)
    expect(mended[0]?.area).toBeLessThan(Math.PI * 400 * 1.05)
  })

  it('of pieces left for another garment: ids, copies, area', () => {
    const pieces = [boxPiece('a', 100, 90, { copies: 2 }), boxPiece('b', 20, 30, { copies: 3 })]
    const question = asking(patternOf(pieces), remnant(SHEET))
    const steps = remediesFor(question, undecided(question)).flatMap((remedy) => remedy.steps)
    expect(steps).toContainEqual({
      kind: 'other-garment',
      pieces: ['b'],
      role: null,
      copies: 3,
      area: 1800,
    })
  })
})

describe('joins', () => {
  it('keep grain, stretch, pile, copies and pairs, and are not joined again', () => {
    const whole = boxPiece('back', 90, 180, {
      joins: 'either',
      copies: 2,
      mirror: 'pairs',
      tilt: 3,
      needs: { across: 20, along: 5 },
    })
    const question = asking(
      patternOf([whole]),
      remnant(rectangle(300, 120), { stretch: { across: 30, along: 10 } }),
    )
    const joined = remediesFor(question, undecided(question)).filter(({ steps }) => steps[0]?.kind === 'join')
    expect(joined.length).toBe(4)
    for (const { question: changed } of joined) {
      expect(changed.pattern.pieces).toHaveLength(2)
      for (const part of changed.pattern.pieces) {
        expect(part).toMatchObject({
          role: 'main',
          copies: 2,
          mirror: 'pairs',
          grain: 'along',
          tilt: 3,
          needs: { across: 20, along: 5 },
          surface: 'as-panel',
        })
        expect(part.joins).toBeUndefined()
      }
      expect(changed.pattern.versions[0]?.pieces).toEqual(changed.pattern.pieces.map(({ id }) => id))
    }
  })

  it('are only for pieces whose maker allows them', () => {
    const question = asking(patternOf([boxPiece('back', 90, 180)]), remnant(SHEET))
    expect(remediesFor(question, undecided(question)).map(({ steps }) => steps[0]?.kind)).not.toContain(
      'join',
    )
  })
})

describe('what a proof rules out', () => {
  const pieces = [
    boxPiece('front', 90, 60, { needs: { across: 50, along: 0 }, joins: 'across' }),
    boxPiece('tab', 60, 50, { joins: 'across' }),
  ]
  const question = asking(patternOf(pieces, { mostTilt: 5 }), remnant(SHEET))
  const withReason = (kind: string, names: readonly string[]): CheckAnswer => {
    const answer = undecided(question)
    const reason = { kind, text: '', pieces: names, figures: {} }
    return { ...answer, lay: { ...answer.lay, verdict: 'cannot', reason } }
  }
  const kindsFor = (answer: CheckAnswer, asked = question) =>
    remediesFor(asked, answer).map(({ steps }) => steps[0]?.kind)

  it('nothing is proposed for what fits', () => {
    const answer = undecided(question)
    expect(remediesFor(question, { ...answer, lay: { ...answer.lay, verdict: 'fits' } })).toEqual([])
    expect(pairsFor(question, { ...answer, lay: { ...answer.lay, verdict: 'fits' } })).toEqual([])
  })

  it('after want of stretch: tilts, joins and sizes', () => {
    expect(kindsFor(withReason('stretch', ['front']))).toEqual([])
    const stretchy = { ...question, garment: remnant(SHEET, { stretch: { across: 10, along: 60 } }) }
    expect(kindsFor(withReason('stretch', ['front']), stretchy)).toEqual(['quarter-turn'])
  })

  it('after a proof about some pieces: joins of others', () => {
    const joined = (names: readonly string[]) =>
      remediesFor(question, withReason('group', names)).flatMap(({ steps }) =>
        steps.flatMap((step) => (step.kind === 'join' ? [step.piece] : [])),
      )
    expect(new Set(joined(['tab']))).toEqual(new Set(['tab']))
    expect(new Set(joined(['front', 'tab']))).toEqual(new Set(['front', 'tab']))
  })

  it('where there is less cloth than pieces: turns, tilts and joins', () => {
    const large = asking(
      patternOf([boxPiece('front', 290, 120, { joins: 'across' })], { mostTilt: 5 }),
      remnant(SHEET),
    )
    expect(polygonArea(SHEET)).toBeLessThan(290 * 120)
    expect(kindsFor(undecided(large), large)).toEqual([])
  })
})
