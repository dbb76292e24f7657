import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { checkPacking } from '../../../src/core/packing/check/check-packing.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import type { SolveProgress } from '../../../src/core/planning/check.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import type { LayPiece, LayProblem } from '../../../src/core/planning/lay-problem.ts'
import { translateProblem } from '../../../src/core/planning/translate.ts'
import { placementsFrom } from '../../../src/core/planning/warm-start.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'
import { type LayFile, layFaults, type ProblemFile } from '../../support/lay-checker.ts'
import { layProblem, panel, piece, rectangle, within, withinSteps } from '../../support/lay-problems.ts'
import { randomRuns } from '../../support/random-runs.ts'

beforeAll(throwOnBrokenInvariants)

function faultsOf(problem: LayProblem, lay: Lay): string[] {
  return layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)
}

function answer(problem: LayProblem, seconds = 5): Lay {
  const lay = answerLay(problem, within(seconds))
  expect(faultsOf(problem, lay)).toEqual([])
  return lay
}

const alike = (more: Partial<LayPiece> = {}) => ({ turnAlike: 'sleeves', ...more })
const turnsOf = ({ placements }: Lay) => new Set(placements.map(({ turn }) => turn % 180))

/** An L of two arms, 100 wide: one holds a bar of 100 × 300 upright, the other one lying. */
const ell = panel([
  [0, 0],
  [400, 0],
  [400, 100],
  [100, 100],
  [100, 400],
  [0, 400],
])
const bar = (more: Partial<LayPiece>) => piece(rectangle(100, 290), { grain: 'either', ...more })

describe('copies that turn alike', () => {
  it('cannot lie one lengthwise and one crosswise, and it is proved by both choices', () => {
    expect(answer(layProblem([ell], [bar({ count: 2 })])).verdict).toBe('fits')
    const lay = answer(layProblem([ell], [bar(alike({ id: 'sleeve', count: 2 }))]))
    expect(lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'alike', pieces: ['sleeve'] } })
    expect(lay.reason?.text).toContain('same way of the cloth')
  })

  it('are of one piece, of both halves of pairs, or of several pieces', () => {
    const two = [bar(alike({ id: 'front' })), bar(alike({ id: 'back' }))]
    expect(answer(layProblem([ell], two)).verdict).toBe('cannot')
    expect(answer(layProblem([ell], [bar(alike({ count: 2, mirror: 'pairs' }))])).verdict).toBe('cannot')
    const free = [bar({ id: 'front', turnAlike: 'a' }), bar({ id: 'back', turnAlike: 'b' })]
    expect(turnsOf(answer(layProblem([ell], free))).size).toBe(2)
  })

  it('lie in two panels as in one', () => {
    const lengthwise = panel(rectangle(100, 400), { id: 'a' })
    const crosswise = panel(rectangle(400, 100), { id: 'b' })
    const asked = layProblem([lengthwise, crosswise], [bar(alike({ count: 2 }))])
    expect(answer(asked).verdict).toBe('cannot')
    expect(answer({ ...asked, panels: [lengthwise, { ...lengthwise, id: 'c' }] }).verdict).toBe('fits')
  })

  it('lie head and foot anyhow on plain cloth, and head for head on cloth with a pile', () => {
    // Together two wedges fill the cloth, head to foot.
    const wedge = piece(
      [
        [0, 0],
        [180, 0],
        [100, 300],
        [0, 300],
      ],
      alike({ count: 2, surface: 'any', mirror: 'none' }),
    )
    const cloth = panel(rectangle(281, 301))
    expect(answer(layProblem([cloth], [wedge])).verdict).toBe('fits')
    const pile = layProblem([{ ...cloth, surface: 'one-way' }], [wedge])
    expect(answer(pile)).toMatchObject({ verdict: 'cannot', reason: { kind: 'alike' } })
    expect(answer({ ...pile, pieces: [{ ...wedge, turnAlike: undefined } as never] }).verdict).toBe('fits')
    // One of them on the pile and one on plain cloth: only the line must be the same.
    const half = rectangle(190, 301)
    const mixed = [panel(half, { id: 'pile', surface: 'one-way' }), panel(half, { id: 'plain' })]
    expect(answer(layProblem(mixed, [wedge])).verdict).toBe('fits')
  })

  it('may be off each other by their tilts', () => {
    const lean = (turn: number) =>
      panel(
        rectangle(100.3, 290.3, -50, -145).map(([x, y]) => {
          const angle = (turn * Math.PI) / 180
          return [
            x * Math.cos(angle) - y * Math.sin(angle),
            x * Math.sin(angle) + y * Math.cos(angle),
          ] as const
        }),
        { id: `at ${turn}` },
      )
    const asked = (turn: number, more: Partial<LayPiece>) =>
      layProblem([lean(0), lean(turn)], [piece(rectangle(100, 290), alike({ count: 2, ...more }))])
    expect(answer(asked(3, { tilt: 3 })).verdict).toBe('fits')
    // Each may be off the grain by so much, and off the other by the sum.
    expect(answer(asked(15, { turns: [0, 15], tilt: 8 })).verdict).toBe('fits')
    expect(answer(asked(15, { turns: [0, 15], tilt: 7 })).verdict).not.toBe('fits')
    expect(answer(asked(15, { turns: [0, 15] }))).toMatchObject({ verdict: 'cannot' })
  })

  it('that may turn anyhow find a turn in common, and are not refuted for want of one', () => {
    const slanting = panel([
      [0, 0],
      [300, 200],
      [230, 305],
      [-70, 105],
    ])
    const strip = piece(rectangle(50, 340), alike({ count: 2, grain: 'any' }))
    const lay = answer(layProblem([slanting], [strip]))
    expect(lay.verdict).toBe('fits')
    expect(
      answer(layProblem([ell], [piece(rectangle(100, 290), alike({ count: 2, grain: 'any' }))])).verdict,
    ).toBe('not-found')
  })

  it('leave out an optional one rather than turn it otherwise', () => {
    const lay = answer(layProblem([ell], [bar(alike({ id: 'a' })), bar(alike({ id: 'b', optional: true }))]))
    expect(lay).toMatchObject({ verdict: 'fits', leftOut: ['b#1'] })
  })

  it('have a choice made for each group, and all of them proved', () => {
    const wide = panel([...ell.outline.slice(0, 2), [400, 150], [150, 150], [150, 400], [0, 400]])
    const asked = layProblem(
      [wide],
      [
        bar({ id: 'a', turnAlike: 'a', count: 2 }),
        piece(rectangle(40, 280), { id: 'b', grain: 'either', turnAlike: 'b', count: 2 }),
      ],
    )
    expect(answer(asked).verdict).toBe('cannot')
    expect(answer({ ...asked, panels: [panel(rectangle(290, 290))] }).verdict).toBe('fits')
  })

  it('keep their turn while what is to spare is looked for', () => {
    // Crosswise there would be more to spare for either of them alone.
    const room = panel(rectangle(330, 420))
    const asked = layProblem([room], [bar(alike({ count: 3 }))])
    const { spare } = answer(asked)
    const [whole] = [answerLay(asked, within(5))]
    expect(spare).toBeGreaterThan(5)
    expect(turnsOf(whole).size).toBe(1)
  })

  it('turn alike in every part-lay that is shown', () => {
    const asked = layProblem([panel(rectangle(520, 560))], [bar(alike({ count: 9 }))])
    const seen: SolveProgress[] = []
    const lay = answerLay(asked, { ...within(3), onProgress: (progress) => seen.push(progress) })
    for (const { best } of [...seen, { best: lay }]) expect(faultsOf(asked, best)).toEqual([])
  })
})

const RUNS = randomRuns('turn alike', 120)
const SIDES = [60, 90, 120, 150]

describe('random problems with pieces that turn alike', () => {
  // Truth by the separate checker: each lay, and for each `no` that none of the lays found without the rule keeps it.
  it(
    'never get a false yes, nor a no beside a lay that serves',
    () => {
      const counts = { fits: 0, cannot: 0, 'not-found': 0 }
      const shape = fc.record({
        width: fc.constantFrom(...SIDES),
        height: fc.constantFrom(...SIDES),
        count: fc.integer({ min: 1, max: 3 }),
        grain: fc.constantFrom('along', 'either', 'either', 'bias', 'any'),
        tilt: fc.constantFrom(0, 0, 4),
        surface: fc.constantFrom('as-panel', 'any'),
        turnAlike: fc.constantFrom('a', 'a', 'b'),
      } as const)
      const ground = fc.record({
        width: fc.integer({ min: 100, max: 320 }),
        height: fc.integer({ min: 100, max: 320 }),
        surface: fc.constantFrom('plain', 'plain', 'one-way'),
      } as const)
      fc.assert(
        fc.property(
          fc.array(shape, { minLength: 1, maxLength: 3 }),
          fc.array(ground, { minLength: 1, maxLength: 2 }),
          (shapes, grounds) => {
            const pieces = shapes.map(({ width, height, ...more }, k) =>
              piece(rectangle(width, height), { id: `piece ${k}`, ...more }),
            )
            const panels = grounds.map(({ width, height, surface }, k) =>
              panel(rectangle(width, height), { id: `panel ${k}`, surface }),
            )
            const problem = layProblem(panels, pieces)
            const lay = answerLay(problem, withinSteps(300))
            expect(faultsOf(problem, lay)).toEqual([])
            counts[lay.verdict]++
            const free = { ...problem, pieces: pieces.map(({ turnAlike: _, ...one }) => one) }
            for (const seed of [1, 2]) {
              const other = answerLay(free, withinSteps(300, seed))
              if (other.verdict !== 'fits' || lay.verdict !== 'cannot') continue
              expect(faultsOf(problem, other)).not.toEqual([])
              const translation = translateProblem(problem)
              const faults = checkPacking(
                translation.packing,
                placementsFrom(translation, other.placements),
                [],
              )
              expect(faults.map(({ kind }) => kind)).toContain('unlike')
            }
            RUNS.tick(counts)
          },
        ),
        { numRuns: RUNS.count, seed: 3 },
      )
      expect(Math.min(counts.fits, counts.cannot)).toBeGreaterThan(RUNS.count / 10)
    },
    1000 * RUNS.count + 60_000,
  )
})
