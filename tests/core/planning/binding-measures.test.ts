import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { deadlineAfter } from '../../../src/core/base/deadline.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import { bindingMeasures } from '../../../src/core/planning/binding-measures.ts'
import type { CheckQuestion } from '../../../src/core/planning/check.ts'
import { measuresAsked } from '../../../src/core/planning/measures-off.ts'
import { worthMeasuringAgain } from '../../../src/core/planning/worth-measuring-again.ts'
import {
  answered,
  asking,
  boxPiece,
  measuredCloth,
  patternOf,
  undecided,
} from '../../support/check-questions.ts'
import { layProblem, panel, piece, rectangle, within, withinSteps } from '../../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

function outcomes(question: CheckQuestion, doubt = 8) {
  return [...bindingMeasures(question, answered(question, within(5)), doubt, within(5))]
}

const front = (width: number, height: number) => patternOf([boxPiece('front', width, height)])

describe('the measures that bind', () => {
  it('are those without which it does not fit', () => {
    const all = outcomes(asking(front(295, 150), measuredCloth(300, 200)))
    expect(all.map(({ measure, by, verdict, binds }) => ({ measure, by, verdict, binds }))).toEqual([
      { measure: 'cloth-width', by: -8, verdict: 'cannot', binds: true },
      { measure: 'cloth-length', by: -8, verdict: 'fits', binds: false },
    ])
    expect(worthMeasuringAgain(all).map(({ measure }) => measure)).toEqual(['cloth-width'])
  })

  it('are also those that eat most of the spare', () => {
    // 300 − 290 leaves a spare of 5 at each side, 200 − 188 one of 6; with 8 mm less it is 1, or 2.
    const all = outcomes(asking(front(290, 188), measuredCloth(300, 200)))
    expect(all.every(({ verdict }) => verdict === 'fits')).toBe(true)
    expect(worthMeasuringAgain(all).map(({ measure }) => measure)).toEqual(['cloth-width', 'cloth-length'])
    expect(outcomes(asking(front(200, 100), measuredCloth(300, 200))).filter(({ binds }) => binds)).toEqual(
      [],
    )
  })

  it('are, where it does not fit, single ones that would save it', () => {
    const all = outcomes(asking(front(305, 150), measuredCloth(300, 200)))
    expect(all.map(({ measure, by, verdict, binds }) => [measure, by, verdict, binds])).toEqual([
      ['cloth-width', 8, 'fits', true],
      ['cloth-length', 8, 'cannot', false],
    ])
    expect(outcomes(asking(front(305, 205), measuredCloth(300, 200))).filter(({ binds }) => binds)).toEqual(
      [],
    )
  })

  it('say so when nothing is left of the garment', () => {
    const all = outcomes(asking(front(30, 30), measuredCloth(40, 200)), 39.5)
    expect(all[0]).toMatchObject({ measure: 'cloth-width', verdict: null, binds: true })
  })

  it('stop at the deadline', () => {
    const question = asking(front(295, 150), measuredCloth(300, 200))
    const clock = () => 0
    const past = { seed: 1, clock, deadline: deadlineAfter(0, clock) }
    expect([...bindingMeasures(question, answered(question, within(5)), 8, past)]).toEqual([])
  })
})

describe('a measure that touches no panel in use', () => {
  // Wider than half the front, longer than a sleeve is wide: it lies on front or back.
  const shirt = { ...emptyGarment('t-shirt', 'shirt'), cloth: measuredCloth(1, 1).cloth }
  const onBody = patternOf([boxPiece('front', 470, 350)])
  const sleeve = measuresAsked(shirt).filter((id) => id.startsWith('sleeve'))

  it('never binds, however little time there is to see that it does not', () => {
    expect(sleeve).toEqual(['sleeve-length'])
    const question = asking(onBody, shirt)
    const answer = answered(question, within(5))
    expect(answer.lay.verdict).toBe('fits')
    expect(answer.lay.placements.map(({ panel: on }) => on)).not.toContain('sleeve-left')
    for (let steps = 1; steps < 60; steps += 12) {
      const all = [...bindingMeasures(question, answer, 8, withinSteps(steps))]
      expect({ steps, binds: worthMeasuringAgain(all).map(({ measure }) => measure) }).toEqual({
        steps,
        binds: expect.not.arrayContaining(sleeve),
      })
    }
  })

  it('never saves what was only not found: the lay found with it is one without it too', () => {
    const question = asking(onBody, shirt)
    const all = [...bindingMeasures(question, undecided(question), 8, within(5))]
    expect(all.length).toBeGreaterThan(3)
    expect(worthMeasuringAgain(all)).toEqual([])
  })

  it('never saves a piece that lies on other panels only', () => {
    const question = asking(patternOf([boxPiece('front', 500, 900)]), shirt)
    const all = [...bindingMeasures(question, answered(question, within(5)), 8, within(5))]
    expect(worthMeasuringAgain(all).filter(({ measure }) => sleeve.includes(measure))).toEqual([])
  })
})

describe('a search that begins from a lay', () => {
  it('keeps the lay where it still holds, of pairs too, and passes over what is not there', () => {
    const problem = (width: number) =>
      layProblem(
        [panel(rectangle(width, 300))],
        [piece(rectangle(90, 140), { count: 4, mirror: 'pairs' }), piece(rectangle(30, 30), { id: 'tab' })],
      )
    const first = answerLay(problem(300), within(5))
    expect(first.verdict).toBe('fits')
    const strange = { ...first.placements[0]!, piece: 'gone', panel: 'elsewhere' }
    const again = answerLay(problem(305), { ...within(5), warmStart: [...first.placements, strange] })
    expect(again).toMatchObject({ verdict: 'fits', leftOut: [] })
    const places = (placements: typeof first.placements) =>
      placements.map(({ piece: id, copy, x, y }) => [id, copy, Math.round(x), Math.round(y)])
    expect(places(again.placements)).toEqual(places(first.placements))
  })
})
