import { beforeAll, describe, expect, it } from 'vitest'
import { raglanTop } from '../../../demo-data/drafting/raglan-top.ts'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import type { Garment } from '../../../src/core/garments/garment.ts'
import { polygonBox } from '../../../src/core/geometry/index.ts'
import type { OutlineShape, PieceShape } from '../../../src/core/patterns/pattern.ts'
import { layProblemFor } from '../../../src/core/planning/check-problem.ts'
import type { LayProblem } from '../../../src/core/planning/lay-problem.ts'
import type { MotifWish } from '../../../src/core/planning/motif-wish.ts'
import { remediesFor } from '../../../src/core/planning/remedies/remedies-for.ts'
import { solveRemedies } from '../../../src/core/planning/remedies/solve-remedies.ts'
import { answered, asking, boxPiece, measuredCloth, patternOf } from '../../support/check-questions.ts'
import { rectangle, within } from '../../support/lay-problems.ts'
import { aPiece } from '../../support/pattern-builder.ts'

beforeAll(throwOnBrokenInvariants)

/** A front of finished size with a hem of 20 and no other allowance. */
const front = (width: number, height: number): OutlineShape => ({
  form: 'outline',
  onFold: false,
  points: [
    { at: [0, 0], allowance: 20, use: 'hem' },
    { at: [width, 0], allowance: 0 },
    { at: [width, height], allowance: 0 },
    { at: [0, height], allowance: 0 },
  ],
})
const hemmed = (width: number, height: number) =>
  patternOf([aPiece({ id: 'front', name: 'Front', copies: 1, shapes: { M: front(width, height) } })])

/** A scarf of 300 × 215 with narrow hems of 15 all round: 270 × 185 when they are cut off. */
const scarf: Garment = measuredCloth(300, 215, { hemmed: true })

function problemOf(question: Parameters<typeof layProblemFor>[0], heads: 'up' | 'down' = 'up'): LayProblem {
  const problem = layProblemFor(question, heads)
  if (!problem.ok) throw new Error(JSON.stringify(problem.faults))
  return problem.value
}

describe('the garment’s own hem', () => {
  it('saves the allowance and what cutting the hem off would lose', () => {
    const asked = asking(hemmed(200, 180), scarf)
    expect(answered(asked, within(3)).lay.verdict).toBe('cannot')
    const own = { ...asked, ownHem: ['front'] }
    const { lay, problem } = answered(own, within(3))
    expect(lay).toMatchObject({ verdict: 'fits' })
    expect(problem.panels[0]).toMatchObject({ finishedDepth: 15 })
    expect(problem.pieces[0]?.sit).toMatchObject({ must: true })
    expect(polygonBox(problem.pieces[0]?.outline ?? [])).toEqual({ minX: 0, minY: 0, maxX: 200, maxY: 180 })
  })

  it('changes nothing for pieces that can have none', () => {
    const disc = aPiece({ id: 'tie', shapes: { M: { form: 'circle', diameter: 50, allowance: 5 } } })
    const asked = asking(patternOf([disc]), scarf)
    expect(problemOf({ ...asked, ownHem: ['tie'] }).pieces).toEqual(problemOf(asked).pieces)
  })

  it('serves the lower edge of a plain shape of her own, whatever its sides do', () => {
    // Finished 240 × 190 with 10 all round: 260 × 210, or 260 × 200 without the hem, on 270 × 185 and a hem of 15.
    const plain = { height: 190, allowance: 10 }
    const shapes: readonly PieceShape[] = [
      { form: 'box', width: 240, ...plain },
      { form: 'trapezoid', bottom: 200, top: 240, ...plain },
      { form: 'trapezoid', bottom: 240, top: 200, ...plain },
      { form: 'triangle', width: 230, height: 170, allowance: 10 },
      { form: 'half-moon', width: 240, ...plain },
      { form: 'strip', edge: 120, ratio: 2, height: 190, folded: false, endAllowance: 10, sideAllowance: 10 },
    ]
    for (const shape of shapes) {
      const piece = aPiece({ id: 'panel', copies: 1, shapes: { M: shape } })
      const asked = asking(patternOf([piece]), scarf)
      expect(answered(asked, within(3)).lay.verdict).toBe('cannot')
      expect(answered({ ...asked, ownHem: ['panel'] }, within(3)).lay.verdict).toBe('fits')
      const [remedy] = remediesFor(asked, answered(asked, within(3))).filter(
        ({ steps }) => steps[0]?.kind === 'own-hem',
      )
      expect(remedy?.steps).toEqual([{ kind: 'own-hem', pieces: ['panel'], saved: 10, lowerEdge: ['panel'] }])
    }
  })

  it('serves a shipped sleeve whose sides lean out above its hem', () => {
    const raglan = raglanTop()
    const sleeve = { ...raglan, versions: [{ id: 'sleeve', name: 'Sleeve', pieces: ['sleeve-short'] }] }
    const size = raglan.sizes[0] as string
    const asked = { ...asking(sleeve, measuredCloth(1200, 400, { hemmed: true })), version: 'sleeve', size }
    const stretchy = {
      ...asked.garment,
      cloth: { ...asked.garment.cloth, stretch: { across: 60, along: 40 } },
    }
    const own = { ...asked, garment: stretchy, ownHem: ['sleeve-short'] }
    expect(answered(own, within(5)).lay.verdict).toBe('fits')
  })

  it('asks for those that are drawn with a hem before those of plain shape', () => {
    const both = patternOf([
      aPiece({ id: 'tie', copies: 1, shapes: { M: { form: 'box', width: 60, height: 30, allowance: 5 } } }),
      ...hemmed(900, 180).pieces,
    ])
    const asked = asking(both, scarf)
    const steps = remediesFor(asked, answered(asked, within(3))).flatMap((remedy) => remedy.steps)
    const own = steps.filter(({ kind }) => kind === 'own-hem')
    expect(own).toEqual([
      { kind: 'own-hem', pieces: ['front'], saved: 20 },
      { kind: 'own-hem', pieces: ['front', 'tie'], saved: 20, lowerEdge: ['tie'] },
      { kind: 'own-hem', pieces: ['tie'], saved: 5, lowerEdge: ['tie'] },
    ])
  })

  it('is offered, solved, where it saves the garment', () => {
    const asked = asking(hemmed(200, 180), scarf)
    const answer = answered(asked, within(3))
    const outcomes = [...solveRemedies(asked, answer, within(10))]
    const own = outcomes.find(({ remedy }) => remedy.steps[0]?.kind === 'own-hem')
    expect(own?.remedy.steps).toEqual([{ kind: 'own-hem', pieces: ['front'], saved: 20 }])
    expect(own?.answer.lay.verdict).toBe('fits')
  })

  it('is not offered where the garment has no hem, or the piece uses it already', () => {
    const kinds = (question: ReturnType<typeof asking>) =>
      remediesFor(question, answered(question, within(3))).flatMap(({ steps }) =>
        steps.map(({ kind }) => kind),
      )
    expect(kinds(asking(hemmed(900, 180), scarf))).toContain('own-hem')
    expect(kinds(asking(hemmed(900, 180), measuredCloth(300, 215)))).not.toContain('own-hem')
    expect(kinds({ ...asking(hemmed(900, 180), scarf), ownHem: ['front'] })).not.toContain('own-hem')
  })
})

describe('a print to show', () => {
  const print: MotifWish = {
    panel: 'cloth',
    outline: rectangle(40, 40, 100, 60),
    piece: 'bib',
    place: 'upper',
    anyWayUp: false,
    within: 10,
  }
  const bib = patternOf([boxPiece('bib', 120, 160)])

  it('is told in the piece’s own coordinates, three quarters up', () => {
    const problem = problemOf({ ...asking(bib, scarf), motif: print })
    expect(problem.pieces[0]?.shows).toEqual({ motif: 'print', at: [60, 120], within: 10 })
    expect(problem.panels[0]?.motifs).toEqual([{ id: 'print', outline: print.outline, up: 0 }])
    const anyhow = problemOf({ ...asking(bib, scarf), motif: { ...print, anyWayUp: true } })
    expect(anyhow.panels[0]?.motifs).toEqual([{ id: 'print', outline: print.outline }])
  })

  it('comes out the right way up, as worn, unless any way will do', () => {
    // Below the print there are 80, and as worn the piece would reach 120 below it.
    const asked = { ...asking(bib, measuredCloth(300, 215)), motif: print }
    expect(answered(asked, within(3)).lay).toMatchObject({ verdict: 'cannot', reason: { kind: 'shows' } })
    const anyhow = { ...asked, motif: { ...print, anyWayUp: true } }
    expect(answered(anyhow, within(3)).lay).toMatchObject({ verdict: 'fits', placements: [{ turn: 180 }] })
  })

  it('is the right way up where heads point down the pile, or not at all', () => {
    const velvet = { ...measuredCloth(300, 215) }
    const pile = { ...velvet, cloth: { ...velvet.cloth, surface: 'one-way' as const } }
    const high = { ...print, outline: rectangle(40, 40, 100, 130) }
    expect(answered({ ...asking(bib, pile), motif: high }, within(3))).toMatchObject({
      heads: 'up',
      lay: { verdict: 'fits' },
    })
    expect(answered({ ...asking(bib, pile), motif: print }, within(3)).lay.verdict).toBe('cannot')
    const anyhow = { ...print, anyWayUp: true }
    expect(answered({ ...asking(bib, pile), motif: anyhow }, within(3))).toMatchObject({
      heads: 'down',
      lay: { verdict: 'fits' },
    })
  })

  it('is shown', () => {
    const cloth = measuredCloth(300, 215)
    const high = { ...print, outline: rectangle(40, 40, 100, 130) }
    expect(answered({ ...asking(bib, cloth), motif: high }, within(3)).lay.verdict).toBe('fits')
    // In the corner of the cloth its middle is 20 up, and the piece reaches 120 below the middle of its print.
    const corner = { ...print, outline: rectangle(40, 40, 0, 0) }
    expect(answered({ ...asking(bib, cloth), motif: corner }, within(3)).lay).toMatchObject({
      verdict: 'cannot',
      reason: { kind: 'shows' },
    })
    // Lower down on the piece it may show all the same.
    const anywhere: MotifWish = { ...corner, place: 'anywhere' }
    expect(answered({ ...asking(bib, cloth), motif: anywhere }, within(3)).lay.verdict).toBe('fits')
  })

  it('turns with the panel when heads point down', () => {
    const up = problemOf({ ...asking(bib, scarf), motif: print })
    const down = problemOf({ ...asking(bib, scarf), motif: print }, 'down')
    expect(down.panels[0]?.motifs?.[0]).toMatchObject({ up: 180, outline: { 0: [-100, -60] } })
    expect(down.pieces).toEqual(up.pieces)
  })

  it('counts for nothing on a panel that is gone or for a piece not asked', () => {
    const plain = problemOf(asking(bib, scarf))
    expect(problemOf({ ...asking(bib, scarf), motif: { ...print, panel: 'front' } })).toEqual(plain)
    expect(problemOf({ ...asking(bib, scarf), motif: { ...print, piece: 'tie' } }).pieces).toEqual(
      plain.pieces,
    )
  })

  it('is kept by every remedy', () => {
    const long = patternOf([boxPiece('bib', 120, 400, { joins: 'either' }), boxPiece('tie', 30, 30)])
    const asked = { ...asking(long, scarf), motif: print }
    const kinds = (question: ReturnType<typeof asking>) =>
      remediesFor(question, answered(question, within(3))).flatMap(({ steps }) =>
        steps.map(({ kind }) => kind),
      )
    expect(kinds(asking(long, scarf))).toContain('join')
    expect(kinds(asked)).not.toContain('join')
  })
})
