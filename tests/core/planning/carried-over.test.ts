import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import type { Garment } from '../../../src/core/garments/garment.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import type { Pattern } from '../../../src/core/patterns/pattern.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import { asksNoLess } from '../../../src/core/planning/asks-no-less.ts'
import { carriedOver } from '../../../src/core/planning/carried-over.ts'
import type { CheckAnswer, CheckQuestion } from '../../../src/core/planning/check.ts'
import { withSpare } from '../../../src/core/planning/lay-spare.ts'
import { demoPatterns } from '../../../src/terminal/bench/demo.ts'
import { answered, asking, boxPiece, measuredCloth, patternOf } from '../../support/check-questions.ts'
import { freely, layProblem, panel, piece, rectangle } from '../../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

const PASSED = { passed: () => true, left: () => 0 }
const sized = (scale: number) =>
  layProblem(
    [panel(rectangle(300, 300))],
    [piece(rectangle(100 * scale, 260 * scale, 30 * scale, -40), { count: 2, grain: 'either' })],
  )

describe('the lay of a larger size', () => {
  it('holds for a smaller one, wherever each has its origin, without any time', () => {
    const larger = answerLay(sized(1), freely())
    expect(larger.verdict).toBe('fits')
    const known: CheckAnswer = { problem: sized(1), lay: larger, heads: 'up' }
    const smaller = answerLay(sized(0.8), { ...freely(), deadline: PASSED, known: [known] })
    expect(smaller.verdict).toBe('fits')
  })

  it('gives a smaller one no less to spare, though its own search may be cut to nothing', () => {
    const larger = answerLay(sized(1), freely())
    expect(larger.spare).toBeGreaterThan(10)
    const smaller = { ...answerLay(sized(0.8), { ...freely(), spareAsked: 0 }) }
    let looks = 0
    const deadline = { passed: () => ++looks > 1, left: () => 1 }
    const lay = withSpare(sized(0.8), smaller, {
      seed: 1,
      deadline,
      known: [{ problem: sized(1), lay: larger }],
    })
    expect(lay).toMatchObject({ spare: larger.spare, spareIs: 'at-least' })
  })

  it('lays middle on middle where it cannot hold the piece', () => {
    const [problem, other] = [sized(1), sized(0.8)]
    const lay = answerLay(other, freely())
    const [first, carried] = [lay.placements[0]!, carriedOver(problem, { problem: other, lay })[0]!]
    expect(carried).toMatchObject({ piece: first.piece, copy: first.copy, turn: first.turn })
    expect(carried.x).not.toBe(first.x)
  })
})

describe('what asks no less', () => {
  const pattern = patternOf([boxPiece('front', 200, 100)], { sizes: ['S', 'M', 'L'] })
  const of = (size: string, width: number, more: Partial<CheckQuestion> = {}) =>
    asking(pattern, measuredCloth(width, 400), { size, ...more })

  it.each([
    ['a larger size', of('L', 500), of('M', 500), true],
    ['a smaller garment', of('M', 490), of('M', 500), true],
    ['both', of('L', 490), of('S', 500), true],
    ['the same', of('M', 500), of('M', 500), false],
    ['a smaller size', of('S', 500), of('M', 500), false],
    ['a larger size on a larger garment', of('L', 510), of('M', 500), false],
    ['another gap', of('L', 500, { clearance: 3 }), of('M', 500), false],
    ['another pattern', asking({ ...pattern }, measuredCloth(490, 400)), of('M', 500), false],
  ])('%s: %o', (_, harder, question, is) => {
    expect(asksNoLess(harder, question)).toBe(is)
  })
})

/** The answer with all the spare there is, by the search and by the lays of those that ask no less. */
function spareOf(question: CheckQuestion, known: readonly CheckAnswer[]): CheckAnswer {
  return answered(question, { ...freely(), known })
}

function expectNoLess(harder: CheckQuestion, easier: CheckQuestion): number {
  const first = spareOf(harder, [])
  if (first.lay.verdict !== 'fits') return 0
  const second = spareOf(easier, [first])
  expect(second.lay.verdict).toBe('fits')
  expect(second.lay.spare ?? 0).toBeGreaterThanOrEqual(first.lay.spare ?? 0)
  return 1
}

const shirt = (by: number): Garment => {
  const garment = emptyGarment('t-shirt', 'shirt')
  const measures = Object.fromEntries(Object.entries(garment.measures).map(([id, mm]) => [id, mm + by]))
  const cloth = { ...garment.cloth, stretch: { across: 100, along: 100 } }
  return { ...garment, measures, cloth }
}

const demo = (id: string) => demoPatterns().find((pattern) => pattern.id === id) as Pattern

describe('of demo patterns', () => {
  const few = demoPatterns().filter((_, k) => k % 4 === 0)

  it('no smaller size has less to spare than the next larger one', () => {
    let compared = 0
    for (const pattern of few) {
      const version = (pattern.versions[0] as Pattern['versions'][number]).id
      const [small, large] = pattern.sizes.slice(0, 2)
      if (small === undefined || large === undefined) continue
      const question = (size: string) => asking(pattern, shirt(60), { version, size })
      compared += expectNoLess(question(large), question(small))
    }
    expect(compared).toBeGreaterThan(1)
  })

  it('no larger garment has less to spare than a smaller one', () => {
    let compared = 0
    for (const { id } of few) {
      const pattern = demo(id)
      const question = (by: number) =>
        asking(pattern, shirt(by), {
          version: (pattern.versions[0] as Pattern['versions'][number]).id,
          size: pattern.sizes[0] as string,
        })
      compared += expectNoLess(question(50), question(58))
    }
    expect(compared).toBeGreaterThan(1)
  })
})
