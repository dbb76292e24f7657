import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../../src/core/base/assertions.ts'
import { NO_DEADLINE } from '../../../../src/core/base/deadline.ts'
import { seededRandom } from '../../../../src/core/base/random.ts'
import { MEASURED_KINDS, TELLING_MEASURES } from '../../../../src/core/garments/telling.ts'
import { layProblemFor } from '../../../../src/core/planning/check-problem.ts'
import { checkQuestion } from '../../../../src/core/planning/check-question.ts'
import { withMeasuresRaised, withMeasuresReduced } from '../../../../src/core/planning/measures-off.ts'
import type { BriefQuestion, KindBrief } from '../../../../src/core/planning/shopping-brief/brief.ts'
import { byWidth, clothRungs, garmentOf } from '../../../../src/core/planning/shopping-brief/rungs.ts'
import { shoppingBrief } from '../../../../src/core/planning/shopping-brief/shopping-brief.ts'
import { writeProblem } from '../../../../src/readers/problem-file/write-problem.ts'
import { demoPatterns } from '../../../../src/terminal/bench/demo.ts'
import { boxPiece, patternOf } from '../../../support/check-questions.ts'
import { layFaults, type ProblemFile } from '../../../support/lay-checker.ts'
import { withinSteps } from '../../../support/lay-problems.ts'
import { randomRuns } from '../../../support/random-runs.ts'

beforeAll(throwOnBrokenInvariants)

/** Nothing but the work that it counts ends it. */
const COUNTED = { seed: 1, clock: () => 0, deadline: NO_DEADLINE }

const PATTERN = patternOf([
  boxPiece('front', 300, 400, { needs: { across: 20, along: 0 } }),
  boxPiece('band', 250, 60, { grain: 'either', needs: { across: 40, along: 0 } }),
])

function asking(more: Partial<BriefQuestion> = {}): BriefQuestion {
  return {
    pattern: PATTERN,
    version: 'all',
    size: 'M',
    kind: 't-shirt',
    roles: null,
    clearance: 0,
    doubt: 0,
    units: 'cm',
    ...more,
  }
}

function briefOf(question: BriefQuestion): KindBrief {
  const result = shoppingBrief(question, COUNTED)
  if (!result.ok) throw new Error(JSON.stringify(result.faults))
  return result.value
}

describe('what to look for', () => {
  it('asks of the stretch what hands must show that may be off, and nothing where none is needed', () => {
    const told = (stretchDoubt?: number) =>
      briefOf(asking({ kind: 'cloth', ...(stretchDoubt === undefined ? {} : { stretchDoubt }) })).stretch
    expect(told()).toEqual({ across: 40, along: 0 })
    expect(told(5)).toEqual({ across: 45, along: 0 })
  })

  it('is, of cloth, the width and length that rectangles take, in steps in which it is bought', () => {
    // Raw ends cost nothing; cloth is bought by 5 cm, so 410 mm take 450, and 400 are proved too little.
    const { enough, tooSmall, stretch, oneWay, label } = briefOf(
      asking({ kind: 'cloth', pattern: patternOf([boxPiece('front', 300, 410)]) }),
    )
    expect(enough.map(({ width, length }) => [width, length])).toEqual([
      [900, 450],
      [1100, 450],
      [1400, 450],
    ])
    expect(tooSmall.map(({ width, length }) => [width, length])).toEqual([
      [900, 400],
      [1100, 400],
      [1400, 400],
    ])
    expect({ stretch, oneWay, label }).toEqual({
      stretch: { across: 0, along: 0 },
      oneWay: true,
      label: null,
    })
  })

  it('tells the figures of a tape: whole half centimetres, or whole quarters of an inch', () => {
    const inches = briefOf(asking({ units: 'in' })).enough
    expect(inches.length).toBeGreaterThan(0)
    for (const { width, length } of inches)
      for (const mm of [width, length]) expect(mm / 6.35).toBeCloseTo(Math.round(mm / 6.35), 9)
    for (const { width, length } of briefOf(asking()).enough) expect([width % 5, length % 5]).toEqual([0, 0])
  })

  it('asks more of the garment when the tape may be off', () => {
    const [sure] = briefOf(asking()).enough
    const [doubted] = briefOf(asking({ doubt: 8 })).enough
    expect(doubted!.width * doubted!.length).toBeGreaterThan(sure!.width * sure!.length)
  })

  it('hangs on the seed alone', () => {
    expect(briefOf(asking())).toEqual(briefOf(asking()))
  })

  it('is told as it becomes finer, and the last that is told is the answer', () => {
    const told: KindBrief[] = []
    const result = shoppingBrief(asking(), COUNTED, (brief) => told.push(brief))
    expect(told.length).toBeGreaterThan(2)
    expect(result).toEqual({ ok: true, value: told.at(-1) })
    expect(told[1]!.enough[0]!.length).toBeLessThanOrEqual(told[0]!.enough[0]!.length)
  })

  it('is nothing, and proved to be, where no garment of the kind is large enough', () => {
    const { enough, tooSmall, none } = briefOf(
      asking({ pattern: patternOf([boxPiece('sheet', 1500, 1500)]) }),
    )
    expect(none).toBe(true)
    expect(enough).toEqual([])
    expect(tooSmall).toEqual([expect.objectContaining({ width: 850 })])
  })

  it('asks only for the pieces of the roles wanted, and refuses a role or size that is not there', () => {
    const both = patternOf([boxPiece('front', 300, 400), boxPiece('inside', 500, 500, { role: 'lining' })])
    const [outside] = briefOf(asking({ pattern: both, roles: ['main'] })).enough
    const [whole] = briefOf(asking({ pattern: both })).enough
    expect(outside!.width).toBeLessThan(whole!.width)
    expect(shoppingBrief(asking({ roles: ['mesh'] }), COUNTED)).toMatchObject({
      ok: false,
      faults: [{ field: 'roles' }],
    })
    expect(shoppingBrief(asking({ size: 'XM' }), COUNTED)).toMatchObject({
      ok: false,
      faults: [{ field: 'size' }],
    })
  })

  it('stops at once when it is stopped', () => {
    const stopped = { passed: () => true, left: () => 0 }
    expect(shoppingBrief(asking(), { ...COUNTED, deadline: stopped })).toMatchObject({
      ok: true,
      value: { enough: [], tooSmall: [] },
    })
  })
})

const demos = demoPatterns()
const random = seededRandom(7)
const oneOf = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T

describe('any brief', () => {
  it('tells garments that do, and proves too small only what has no lay', () => {
    const runs = randomRuns('briefs', 4)
    const counts = { enough: 0, proved: 0, doubtful: 0, larger: 0, largerFits: 0 }
    for (let k = 0; k < runs.count; k++) {
      const pattern = oneOf(demos)
      const question = asking({
        pattern,
        version: oneOf(pattern.versions).id,
        size: oneOf(pattern.sizes),
        kind: oneOf(MEASURED_KINDS),
        doubt: oneOf([0, 8]),
        units: oneOf(['cm', 'in'] as const),
      })
      const brief = briefOf(question)
      expectEnough(question, brief)
      expectTooSmall(question, brief)
      counts.enough += brief.enough.length
      counts.proved += brief.tooSmall.length
      counts.doubtful += bandOf(question, brief)
      const larger = largerFit(question, brief)
      counts.larger += larger.tried
      counts.largerFits += larger.fit
      runs.tick(counts)
    }
    expect(counts.enough).toBeGreaterThan(0)
    expect(counts.proved).toBeGreaterThan(0)
    // A larger garment of usual proportions nearly always does; what geometry spoils is rare.
    expect(counts.largerFits).toBeGreaterThanOrEqual(0.75 * counts.larger)
  })
})

/** The lay of each figure keeps every rule, checked by code of its own, on the garment less the doubt. */
function expectEnough({ kind, doubt, ...question }: BriefQuestion, { enough, stretch }: KindBrief): void {
  for (const { garment, width, length, answer } of enough) {
    const telling = TELLING_MEASURES[kind]
    expect([garment.measures[telling.width], garment.measures[telling.length]]).toEqual([width, length])
    expect(garment.cloth.stretch).toEqual(stretch)
    const asked = layProblemFor({ ...question, garment: withMeasuresReduced(garment, doubt) })
    expect(asked).toEqual({ ok: true, value: answer.problem })
    const file = JSON.parse(JSON.stringify(writeProblem(answer.problem))) as ProblemFile
    expect(answer.lay.verdict).toBe('fits')
    expect(layFaults(file, answer.lay as never)).toEqual([])
  }
}

/** No smaller garment of the family has a lay that a search would find, though the tape shows too little by the doubt. */
function expectTooSmall(question: BriefQuestion, { tooSmall, stretch }: KindBrief): void {
  for (const { width, length } of tooSmall) {
    const rungs =
      question.kind === 'cloth'
        ? clothRungs(question, width).filter((rung) => rung.length <= length)
        : byWidth(question).filter((rung) => rung.width <= width)
    const { kind, doubt, ...rest } = question
    for (const rung of [rungs.at(-1)!, oneOf(rungs)]) {
      const garment = withMeasuresRaised(garmentOf(kind, rung, { stretch }), doubt)
      const answer = checkQuestion({ ...rest, garment }, withinSteps(5000, 5))
      expect(answer.ok && answer.value.lay.verdict).not.toBe('fits')
    }
  }
}

/** Steps between what is proved too small and the first that does; never less than one. */
function bandOf(question: BriefQuestion, { enough, tooSmall }: KindBrief): number {
  const [found, proved] = [enough[0], tooSmall[0]]
  if (!found || !proved || question.kind === 'cloth') return 0
  expect(proved.width).toBeLessThan(found.width)
  return found.width - proved.width
}

function largerFit(question: BriefQuestion, { enough, stretch }: KindBrief): { tried: number; fit: number } {
  const [found] = enough
  if (!found || question.kind === 'cloth') return { tried: 0, fit: 0 }
  const { kind, doubt, ...rest } = question
  const larger = byWidth(question).filter(
    ({ width, length }) => width > found.width && length >= found.length,
  )
  const samples = larger.length === 0 ? [] : [oneOf(larger)]
  const fitting = samples.filter((rung) => {
    const garment = withMeasuresReduced(garmentOf(kind, rung, { stretch }), doubt)
    const warmStart = found.answer.lay.placements
    const answer = checkQuestion({ ...rest, garment }, { ...withinSteps(12_000), warmStart })
    return answer.ok && answer.value.lay.verdict === 'fits'
  })
  return { tried: samples.length, fit: fitting.length }
}
