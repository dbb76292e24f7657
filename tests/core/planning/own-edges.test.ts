import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import type { Polygon } from '../../../src/core/geometry/index.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import type { LayProblem } from '../../../src/core/planning/lay-problem.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'
import { type LayFile, layFaults, type ProblemFile } from '../../support/lay-checker.ts'
import { layProblem, panel, piece, rectangle, within } from '../../support/lay-problems.ts'
import { faultsByBoth } from '../../support/planted.ts'

beforeAll(throwOnBrokenInvariants)

function faultsOf(problem: LayProblem, lay: Lay): string[] {
  return layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)
}

function answer(problem: LayProblem): Lay {
  const lay = answerLay(problem, within(5))
  expect(faultsOf(problem, lay)).toEqual([])
  return lay
}

const must = (edge: number) => ({ edge, must: true })

/** A panel like a skirt's: 600 wide at the hem, which is edge 0, 400 at the waist. */
const skirt: Polygon = [
  [0, 0],
  [600, 0],
  [500, 500],
  [100, 500],
]

describe('a piece that must sit', () => {
  it('lies with its edge on the finished edge', () => {
    const problem = layProblem(
      [panel(skirt, { finished: [0] })],
      [piece(rectangle(300, 200), { id: 'front', sit: must(0) })],
    )
    const lay = answer(problem)
    expect(lay).toMatchObject({ verdict: 'fits', placements: [{ turn: 0 }] })
    expect(lay.placements[0]?.y).toBeCloseTo(0, 2)
  })

  it('moves in with the finished edge for the spare', () => {
    const problem = layProblem(
      [panel(rectangle(300, 100), { finished: [0] })],
      [piece(rectangle(200, 80), { sit: must(0) })],
    )
    const { spare } = answer(problem)
    // Upper and lower edge move in: 100 − 2 × 10 is 80.
    expect(spare).toBeGreaterThan(8)
    expect(spare).toBeLessThanOrEqual(10.01)
  })

  it('turns head down to sit with its top edge, and turned over if it may', () => {
    const down = answer(
      layProblem([panel(skirt, { finished: [0] })], [piece(rectangle(300, 200), { sit: must(2) })]),
    )
    expect(down).toMatchObject({ verdict: 'fits', placements: [{ turn: 180 }] })
    const slanted: Polygon = [
      [0, 0],
      [200, 0],
      [140, 120],
    ]
    const over = answer(
      layProblem(
        [panel(rectangle(200, 120), { finished: [0] })],
        [piece(slanted, { count: 2, mirror: 'pairs', sit: must(0) })],
      ),
    )
    expect(over.verdict).toBe('cannot')
  })

  it('fits an edge exactly as long as the finished one, in a panel exactly its size', () => {
    const lay = answer(
      layProblem(
        [panel(rectangle(200, 150), { finished: [0] })],
        [piece(rectangle(200, 150), { sit: must(0) })],
      ),
    )
    expect(lay.verdict).toBe('fits')
  })

  it('sits whichever way round the outlines are drawn', () => {
    const clockwise = [...rectangle(300, 200)].reverse()
    // Reversed, the lower edge runs from point 2, [300, 0], to point 3, [0, 0].
    const lay = answer(
      layProblem([panel([...skirt].reverse(), { finished: [2] })], [piece(clockwise, { sit: must(2) })]),
    )
    expect(lay).toMatchObject({ verdict: 'fits' })
    expect(lay.placements[0]?.y).toBeCloseTo(0, 2)
  })

  it('is not refused for an edge that misses the hem by less than a lay may be off', () => {
    const rise = 500 * Math.tan((3.003 * Math.PI) / 180)
    const slant: Polygon = [
      [0, 0],
      [500, rise],
      [500, 500],
      [0, 500],
    ]
    const question = layProblem(
      [panel(slant, { finished: [0] })],
      [piece(rectangle(150, 100), { tilt: 3, sit: must(0) })],
    )
    // Turned by its 3 degrees, with the middle of its edge on the hem.
    const [x, y] = [200 - 75 * Math.cos(Math.PI / 60), rise * 0.4 - 75 * Math.sin(Math.PI / 60)]
    const placed = { piece: 'piece', copy: 1, panel: 'panel', turn: 3, mirrored: false, x, y }
    const lay = answer(question)
    expect(lay.verdict).not.toBe('cannot')
    expect(faultsByBoth(question, { ...lay, verdict: 'fits', placements: [placed], leftOut: [] })).toEqual([])
  })

  it('may turn by its tilt to sit on a slanting edge, and not by more', () => {
    const slant: Polygon = [
      [0, 0],
      [500, 26.2],
      [500, 500],
      [0, 500],
    ]
    // 26.2 in 500 rises by just under 3 degrees.
    const question = (tilt: number) =>
      layProblem([panel(slant, { finished: [0] })], [piece(rectangle(300, 200), { tilt, sit: must(0) })])
    expect(answer(question(3)).verdict).toBe('fits')
    const lay = answer(question(2.9))
    expect(lay).toMatchObject({
      verdict: 'cannot',
      reason: { kind: 'sit', figures: { seats: 1, aligned: 0 } },
    })
    expect(lay.reason?.text).toContain('grain')
  })

  it.each([
    ['no finished edge', {}, rectangle(200, 100), { seats: 0 }, 'there is none'],
    ['one too short', { finished: [0] }, rectangle(200, 100), { edge: 200, longest: 190 }, '19.0 cm'],
    ['no room above it', { finished: [0] }, rectangle(150, 300), { edge: 150, longest: 190 }, 'room'],
  ])('cannot where there is %s', (_, more, outline, figures, said) => {
    const short: Polygon = [
      [200, 0],
      [390, 0],
      [390, 250],
      [900, 250],
      [900, 600],
      [200, 600],
      [200, 290],
      [0, 290],
      [0, 250],
      [200, 250],
    ]
    const flaws = said === 'room' ? [rectangle(190, 20, 200, 200)] : []
    const lay = answer(
      layProblem([panel(short, { ...more, flaws })], [piece(outline, { id: 'cuff', sit: must(0) })]),
    )
    expect(lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'sit', pieces: ['cuff'], figures } })
    expect(lay.reason?.text).toContain(said)
  })

  it('shares a hem with others as long as there is room, and proves where there is not', () => {
    const question = (count: number) =>
      layProblem(
        [panel(rectangle(620, 400), { finished: [0] })],
        [piece(rectangle(200, 100), { id: 'band', count, sit: must(0) })],
        5,
      )
    expect(answer(question(3)).verdict).toBe('fits')
    // Four would find room in the panel, but not on its hem.
    const lay = answer(question(4))
    expect(lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'group', figures: { copies: 4 } } })
  })

  it('obeys the pile: heads up only', () => {
    const question = (edge: number) =>
      layProblem(
        [panel(skirt, { finished: [0], surface: 'one-way' })],
        [piece(rectangle(200, 100), { sit: must(edge) })],
      )
    expect(answer(question(0)).verdict).toBe('fits')
    expect(answer(question(2))).toMatchObject({ verdict: 'cannot', reason: { kind: 'sit' } })
  })
})

describe('the depth of finished edges', () => {
  it('is kept clear by pieces that do not sit, and used by those that do', () => {
    const hem = { finished: [0], finishedDepth: 30 }
    const free = layProblem([panel(rectangle(100, 100), hem)], [piece(rectangle(100, 80))])
    expect(answer(free).verdict).toBe('cannot')
    expect(answer({ ...free, panels: [panel(rectangle(100, 110), hem)] }).verdict).toBe('fits')
    const seated = layProblem(
      [panel(rectangle(100, 100), hem)],
      [piece(rectangle(100, 80), { sit: must(0) })],
    )
    expect(answer(seated).verdict).toBe('fits')
  })
})

describe('a piece that sits if it can', () => {
  it('sits where there is room', () => {
    const lay = answer(
      layProblem(
        [panel(skirt, { finished: [0] })],
        [piece(rectangle(300, 200), { sit: { edge: 0, must: false } })],
      ),
    )
    expect(lay.placements[0]?.y).toBeCloseTo(0, 2)
  })

  it('lies anywhere else, and is refuted only by what holds anywhere', () => {
    const narrow: Polygon = [
      [150, 0],
      [250, 0],
      [400, 200],
      [400, 500],
      [0, 500],
      [0, 200],
    ]
    const question = (height: number) =>
      layProblem(
        [panel(narrow, { finished: [0] })],
        [piece(rectangle(300, height), { sit: { edge: 0, must: false } })],
      )
    expect(answer(question(200)).verdict).toBe('fits')
    expect(answer(question(480))).toMatchObject({ verdict: 'cannot', reason: { kind: 'piece' } })
  })

  it('gives way to others only as far as it must', () => {
    // The hem holds one of the two; both may lie in the panel.
    const wish = { edge: 0, must: false }
    const problem = layProblem(
      [panel(rectangle(300, 400), { finished: [0] })],
      [
        piece(rectangle(200, 150), { id: 'a', sit: wish }),
        piece(rectangle(200, 150), { id: 'b', sit: wish }),
      ],
    )
    const lay = answer(problem)
    expect(lay.verdict).toBe('fits')
    expect(lay.placements.filter(({ y }) => Math.abs(y) < 0.01 || Math.abs(y - 150) < 0.01)).not.toHaveLength(
      0,
    )
    const sitting = lay.placements.filter(({ y, turn }) => turn === 0 && Math.abs(y) < 0.01)
    expect(sitting).toHaveLength(1)
  })
})
