import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import type { Polygon } from '../../../src/core/geometry/index.ts'
import { answerLay } from '../../../src/core/planning/answer-lay.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import type { LayPanel, LayPiece, LayProblem } from '../../../src/core/planning/lay-problem.ts'
import { writeLayFile } from '../../../src/readers/problem-file/lay-schema.ts'
import { writeProblem } from '../../../src/readers/problem-file/write-problem.ts'
import { type LayFile, layFaults, type ProblemFile } from '../../support/lay-checker.ts'
import { layProblem, panel, piece, rectangle, within } from '../../support/lay-problems.ts'

beforeAll(throwOnBrokenInvariants)

function answer(problem: LayProblem): Lay {
  const lay = answerLay(problem, within(5))
  expect(layFaults(writeProblem(problem) as ProblemFile, writeLayFile(lay) as LayFile)).toEqual([])
  return lay
}

/** A print of 60 × 40 with its middle at (x, y). */
const print = (x: number, y: number) => ({ id: 'print', outline: rectangle(60, 40, x - 30, y - 20) })
const front = (x: number, y: number, more: Partial<LayPanel> = {}) =>
  panel(rectangle(400, 500), { id: 'front', motifs: [print(x, y)], ...more })
const shows = (x: number, y: number, within: number) => ({ motif: 'print', at: [x, y] as const, within })

/** 200 × 250, with the print wanted at the middle, 100 below its top. */
const chest = (off: number, more: Partial<LayPiece> = {}) =>
  piece(rectangle(200, 250), { id: 'chest', shows: shows(100, 150, off), ...more })

describe('a piece that shows a motif', () => {
  it('lies so that the print is in its place', () => {
    const lay = answer(layProblem([front(170, 300)], [chest(15)]))
    expect(lay.verdict).toBe('fits')
    // Turned by 180° the piece would have to begin at (270, 450), which it may: the place decides, not the turn.
    const { turn, x, y } = lay.placements[0] as Lay['placements'][number]
    const [px, py] = turn === 0 ? [x + 100, y + 150] : [x - 100, y - 150]
    expect(Math.hypot(px - 170, py - 300)).toBeLessThanOrEqual(15.01)
  })

  it('lies exactly there if nothing else is allowed', () => {
    const lay = answer(layProblem([front(170, 300, { surface: 'one-way' })], [chest(0)]))
    expect(lay.placements[0]).toMatchObject({ turn: 0 })
    expect(lay.placements[0]?.x).toBeCloseTo(70, 2)
    expect(lay.placements[0]?.y).toBeCloseTo(150, 2)
  })

  it('counts the place in the piece as it lies, turned over and turned', () => {
    const aside = piece(rectangle(200, 250), { mirror: 'free', turns: [90], shows: shows(50, 200, 2) })
    const lay = answer(layProblem([front(195, 420)], [aside]))
    // As drawn it would reach to 420 + 150, beyond the top.
    expect(lay).toMatchObject({ verdict: 'fits', placements: [{ turn: 90, mirrored: true }] })
  })

  it('cannot if the print is too near the edge of the panel, and says how near it comes', () => {
    // Its top must be 100 above the print's middle, and there are only 60: 40 short.
    const lay = answer(layProblem([front(170, 440, { surface: 'one-way' })], [chest(15)]))
    expect(lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'shows', pieces: ['chest'] } })
    expect(lay.reason?.figures).toMatchObject({ within: 15 })
    expect(lay.reason?.figures.nearest).toBeCloseTo(40, 1)
    expect(lay.reason?.text).toContain('4.0 cm')
  })

  it('can at just that distance', () => {
    expect(answer(layProblem([front(170, 440, { surface: 'one-way' })], [chest(40)])).verdict).toBe('fits')
  })

  it('cannot if the print is larger than the piece, or a flaw is in the way', () => {
    const small = piece(rectangle(50, 50), { shows: shows(25, 25, 500) })
    expect(answer(layProblem([front(170, 300)], [small]))).toMatchObject({
      verdict: 'cannot',
      reason: { kind: 'shows', figures: { within: 500 } },
    })
    const stained = front(170, 300, { flaws: [rectangle(10, 10, 100, 300)] })
    expect(answer(layProblem([stained], [chest(15)]))).toMatchObject({
      verdict: 'cannot',
      reason: { kind: 'shows' },
    })
  })

  it('cannot if the cloth that has the print does not serve it', () => {
    const lay = answer(
      layProblem(
        [front(170, 300, { cloth: 'lining' }), panel(rectangle(400, 500), { id: 'back', cloth: 'main' })],
        [chest(15, { cloth: 'main' })],
      ),
    )
    expect(lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'cloth' } })
  })

  it('is one copy of several: the first, as drawn where they are a pair', () => {
    const lay = answer(
      layProblem(
        [front(170, 300), panel(rectangle(210, 260), { id: 'back' })],
        [chest(15, { count: 2, mirror: 'pairs' })],
      ),
    )
    expect(lay.verdict).toBe('fits')
    expect(lay.placements.find(({ copy }) => copy === 1)).toMatchObject({ panel: 'front', mirrored: false })
  })

  it('leaves room for the rest, in whatever order they come', () => {
    const lay = answer(layProblem([front(170, 300)], [piece(rectangle(390, 140), { id: 'yoke' }), chest(60)]))
    expect(lay.verdict).toBe('fits')
  })

  it('may turn by a tilt, and a proof holds for all of it', () => {
    const leaning = (off: number): LayProblem =>
      layProblem([front(170, 440, { surface: 'one-way' })], [chest(off, { tilt: 5 })])
    expect(answer(leaning(15)).verdict).toBe('cannot')
    expect(answer(leaning(40)).verdict).toBe('fits')
  })

  it('cannot where it would have to leave the hem for it, and says so', () => {
    const high = panel(rectangle(400, 500), { finished: [0], motifs: [print(170, 400)] })
    const lay = answer(layProblem([high], [chest(15, { sit: { edge: 0, must: true } })]))
    expect(lay).toMatchObject({
      verdict: 'cannot',
      reason: { kind: 'shows', figures: { edge: 200, within: 15 } },
    })
    expect(lay.reason?.text).toContain('finished edge')
  })

  describe('with an up of its own', () => {
    const upward = (up: number, more: Partial<LayPanel> = {}) =>
      front(200, 250, { motifs: [{ ...print(200, 250), up }], ...more })

    it.each([
      [0, 0],
      [180, 180],
      [-180, 180],
      [540, 180],
    ])('of %d lies at %d', (up, turn) => {
      const lay = answer(layProblem([upward(up)], [chest(60, { grain: 'either' })]))
      expect(lay).toMatchObject({ verdict: 'fits', placements: [{ turn }] })
    })

    it('has the turn that its grain allows within the tilt', () => {
      const lay = answer(layProblem([upward(3)], [chest(60, { tilt: 5 })]))
      expect(lay.verdict).toBe('fits')
      // Off the grain by 5 at most, and off the print's 3 by as much.
      const turn = ((lay.placements[0]?.turn ?? 0) + 180) % 360
      expect(turn).toBeGreaterThanOrEqual(178)
      expect(turn).toBeLessThanOrEqual(185)
    })

    it('stays up where the piece is turned over', () => {
      const over = chest(60, { mirror: 'pairs', count: 2, id: 'over' })
      const lay = answer(layProblem([upward(180, { faces: 2 }), panel(rectangle(210, 260))], [over]))
      expect(lay.verdict).toBe('fits')
      expect(lay.placements.find(({ copy }) => copy === 1)).toMatchObject({ turn: 180 })
    })

    it('cannot where no turn of the piece is that way up, and says so', () => {
      for (const [up, more] of [
        [90, {}],
        [7, { tilt: 5, turns: [355] }],
        [180, { surface: 'one-way' as const }],
      ] as const) {
        const { surface, ...ofPiece } = { surface: 'plain' as const, ...more }
        const lay = answer(layProblem([upward(up, { surface })], [chest(60, ofPiece)]))
        expect(lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'upright', pieces: ['chest'] } })
        expect(lay.reason?.text).toContain('right way up')
      }
    })

    it('binds only the copy that shows it', () => {
      const lay = answer(
        layProblem(
          [upward(180), panel(rectangle(250, 200), { id: 'side' })],
          [chest(60, { count: 2, grain: 'either' })],
        ),
      )
      expect(lay.verdict).toBe('fits')
      expect(lay.placements.find(({ copy }) => copy === 1)).toMatchObject({ turn: 180, panel: 'front' })
    })
  })

  it('sits on the hem as well', () => {
    const hemmed: Polygon = rectangle(400, 500)
    const lay = answer(
      layProblem(
        [panel(hemmed, { finished: [0], finishedDepth: 20, motifs: [print(170, 140)] })],
        [chest(15, { sit: { edge: 0, must: true } })],
      ),
    )
    expect(lay.verdict).toBe('fits')
    expect(lay.placements[0]?.y).toBeCloseTo(0, 2)
  })
})
