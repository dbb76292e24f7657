import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import type { SolveProgress } from '../../../src/core/planning/check.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'
import { type LayFile, layFaults, type ProblemFile } from '../../support/lay-checker.ts'
import { freely, layProblem, panel, piece, rectangle, within } from '../../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

const cloth = rectangle(300, 300)

describe('answerLay', () => {
  it('says fits with a lay that a separate checker accepts, and with its spare', () => {
    const problem = layProblem(
      [panel(cloth)],
      [
        piece(rectangle(100, 280), { id: 'a', count: 2 }),
        piece(rectangle(50, 50), { id: 'b', grain: 'any' }),
      ],
    )
    const lay = answerLay(problem, within(5))
    expect(lay).toMatchObject({ verdict: 'fits', reason: null, leftOut: [] })
    expect(layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
    // 300 high and 280 needed, 300 wide and 250 needed: no edge can move in by more than 10.
    expect(lay.spare).toBeGreaterThan(8)
    expect(lay.spare).toBeLessThanOrEqual(10.01)
  })

  it.each([
    ['stretch', { needs: { across: 40, along: 0 } }, { stretch: { across: 30, along: 50 } }],
    ['stretch', { needs: { across: 1, along: 0 } }, {}],
    ['cloth', { cloth: 'lining' }, { cloth: 'main' }],
    ['surface', { grain: 'bias' as const }, { surface: 'one-way' as const }],
  ])('says cannot for want of %s', (kind, ofPiece, ofPanel) => {
    const lay = answerLay(
      layProblem([panel(cloth, ofPanel)], [piece(rectangle(10, 10), { id: 'tie', ...ofPiece })]),
      within(5),
    )
    expect(lay).toMatchObject({ verdict: 'cannot', placements: [], spare: null, leftOut: ['tie#1'] })
    expect(lay.reason).toMatchObject({ kind, pieces: ['tie'] })
    expect(lay.reason?.text).toMatch(/^.*“tie”.*\.$/)
  })

  it('gives the figures of a stretch that is too little', () => {
    const lay = answerLay(
      layProblem(
        [
          panel(cloth, { stretch: { across: 30, along: 20 } }),
          panel(cloth, { id: 'b', stretch: { across: 10, along: 35 } }),
        ],
        [piece(rectangle(10, 10), { needs: { across: 50, along: 5 } })],
      ),
      within(5),
    )
    expect(lay.reason?.figures).toEqual({ needsAcross: 50, needsAlong: 5, mostAcross: 30, mostAlong: 35 })
  })

  it('lets the cloth refuse an optional piece without harm', () => {
    const lay = answerLay(
      layProblem(
        [panel(cloth, { cloth: 'main' })],
        [piece(rectangle(10, 10)), piece(rectangle(10, 10), { id: 'pocket', cloth: 'mesh', optional: true })],
      ),
      within(5),
    )
    expect(lay).toMatchObject({ verdict: 'fits', leftOut: ['pocket#1'] })
  })

  it('fits nothing on nothing when all is optional', () => {
    const lay = answerLay(
      layProblem(
        [panel(cloth, { cloth: 'main' })],
        [piece(rectangle(10, 10), { cloth: 'mesh', optional: true })],
      ),
      within(5),
    )
    expect(lay).toMatchObject({ verdict: 'fits', placements: [], leftOut: ['piece#1'] })
  })

  it('proves what is too much, and names both halves of a pair as one piece', () => {
    const lay = answerLay(
      layProblem([panel(cloth)], [piece(rectangle(160, 160), { id: 'cup', count: 2, mirror: 'pairs' })]),
      within(5),
    )
    expect(lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'group', pieces: ['cup'] } })
  })

  it('shows only part-lays that keep every rule', () => {
    const problem = layProblem(
      [panel(cloth)],
      [piece(rectangle(90, 140), { id: 'a', count: 6, grain: 'either' })],
    )
    const seen: SolveProgress[] = []
    answerLay(problem, { ...within(5), onProgress: (progress) => seen.push(progress) })
    for (const { best, placed, of } of seen) {
      expect(of).toBe(6)
      expect(best.placements.length).toBe(placed)
      expect(layFaults(writeProblem(problem) as ProblemFile, writeLayFile(best) as LayFile)).toEqual([])
    }
  })

  it('gives the same answer for the same seed', () => {
    const problem = layProblem([panel(cloth)], [piece(rectangle(90, 140), { count: 6, grain: 'either' })])
    const { elapsedMs: _, ...first } = answerLay(problem, freely(7))
    const { elapsedMs: __, ...second } = answerLay(problem, freely(7))
    expect(second).toEqual(first)
  })
})

describe('the spare asked for', () => {
  // 300 wide and 250 needed, 300 high and 280 needed: every edge may move in by 10.
  const problem = layProblem(
    [panel(cloth)],
    [piece(rectangle(100, 280), { id: 'a', count: 2 }), piece(rectangle(50, 50), { id: 'b', grain: 'any' })],
  )

  const asking = (spareAsked: number) => answerLay(problem, { ...freely(), spareAsked })

  it.each([[8], [9.5]])('%d mm is given as so much at least', (asked) => {
    expect(asking(asked)).toMatchObject({ verdict: 'fits', spare: asked, spareIs: 'at-least' })
  })

  it('is measured where there is less', () => {
    const { spare, spareIs } = asking(10.5)
    expect(spareIs).toBe('found')
    expect(spare).toBeGreaterThan(9)
    expect(spare).toBeLessThanOrEqual(10.01)
  })

  it('is not known where none is asked: never 0', () => {
    expect(asking(0)).toMatchObject({ verdict: 'fits', spare: null, spareIs: 'at-least' })
  })
})

describe('what is to spare', () => {
  const tight = (side: number) => layProblem([panel(cloth)], [piece(rectangle(side, side), { count: 4 })])

  it('is 0 only where the search for more came to its end', () => {
    expect(answerLay(tight(150), freely())).toMatchObject({ spare: 0, spareIs: 'found' })
  })

  it('is nothing that is known where there was no time for it', () => {
    const lay = answerLay(tight(150), freely())
    const passed = { passed: () => true, left: () => 0 }
    const again = answerLay(tight(140), { ...freely(), deadline: passed, warmStart: lay.placements })
    expect(again).toMatchObject({ verdict: 'fits', spare: null, spareIs: 'at-least' })
  })

  it('does not hang on the clock: slow or quick, it is the same', () => {
    let now = 0
    const slow = { ...freely(), clock: () => (now += 10_000) }
    const { elapsedMs: _, ...first } = answerLay(tight(140), freely())
    const { elapsedMs: __, ...second } = answerLay(tight(140), slow)
    expect(first).toMatchObject({ spareIs: 'found' })
    expect(second).toEqual(first)
  })

  it('is what the places given have, by a checker of the files alone on panels as much smaller', () => {
    const problem = layProblem(
      [panel(cloth, { flaws: [rectangle(20, 30, 130, 260)] })],
      [piece(rectangle(90, 120), { count: 4 }), piece(rectangle(40, 60), { id: 'b', grain: 'any' })],
    )
    const lay = answerLay(problem, freely())
    const by = lay.spare as number
    expect(by).toBeGreaterThan(1)
    const less = layProblem(
      [
        panel(rectangle(300 - 2 * by, 300 - 2 * by, by, by), {
          flaws: [rectangle(20 + 2 * by, 30 + 2 * by, 130 - by, 260 - by)],
        }),
      ],
      problem.pieces,
    )
    expect(layFaults(writeProblem(less) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
  })
})
