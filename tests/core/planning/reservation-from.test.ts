import { beforeAll, describe, expect, it } from 'vitest'
import { throwOnBrokenInvariants } from '../../../src/core/base/assertions.ts'
import { polygonArea, polygonMoved, polygonOriented } from '../../../src/core/geometry/index.ts'
import type { CheckQuestion } from '../../../src/core/planning/check.ts'
import { projectQuestion } from '../../../src/core/planning/project-question.ts'
import { reservationFrom } from '../../../src/core/planning/reservation-from.ts'
import { clothOf } from '../../../src/core/stash/cloth-of.ts'
import { overlapsOf } from '../../../src/core/stash/overlaps.ts'
import type { Reservation } from '../../../src/core/stash/reservation.ts'
import { reservationFaults } from '../../../src/core/stash/reservation-faults.ts'
import { takenOf } from '../../../src/core/stash/taken.ts'
import {
  answered,
  asking,
  boxPiece,
  measuredCloth,
  patternOf,
  remnant,
} from '../../support/check-questions.ts'
import { rectangle, within } from '../../support/lay-problems.ts'
import { aPiece } from '../../support/pattern-builder.ts'
import { records } from '../../support/stash.ts'
import { testCut, testProject } from '../../support/two-devices.ts'

beforeAll(throwOnBrokenInvariants)

const ids = (project: string, id = `r-${project}`) => ({ id, project, garment: 'cloth' })

function reserved(question: CheckQuestion, project: string): Reservation {
  const answer = answered(question, within(5))
  expect(answer.lay.verdict).toBe('fits')
  return reservationFrom(answer, ids(project), question)
}

/** A wedge, wide at its foot: only one way up does it fit into a cloth of its own shape. */
const wedge = aPiece({
  id: 'wedge',
  copies: 1,
  shapes: {
    M: {
      form: 'outline',
      onFold: false,
      points: [
        { at: [0, 0], allowance: 0 },
        { at: [300, 0], allowance: 0 },
        { at: [200, 200], allowance: 0 },
        { at: [100, 200], allowance: 0 },
      ],
    },
  },
})

describe('the reservation of a lay', () => {
  it('has every copy where the lay has it, and holds on the cloth', () => {
    const garment = { ...measuredCloth(600, 400), id: 'cloth' }
    const question = asking(
      patternOf([boxPiece('body', 200, 300, { copies: 2 }), boxPiece('tie', 190, 50)]),
      garment,
    )
    const reservation = reserved(question, 'bag')
    expect(reservation.pieces.map(({ piece, copy }) => `${piece}#${copy}`).sort()).toEqual([
      'body#1',
      'body#2',
      'tie#1',
    ])
    expect(reservation).toMatchObject({ project: 'bag', garment: 'cloth', clearance: 0 })
    expect(reservation.pieces.every(({ outline }) => polygonArea(outline) > 0)).toBe(true)
    expect(reservationFaults(reservation, clothOf(garment, records()))).toEqual([])
  })

  it('of a pile whose heads point down is turned back to how the stash draws the cloth', () => {
    // The cloth is the wedge upside down, so heads must point down.
    const outline = [
      [100, 0],
      [200, 0],
      [300, 200],
      [0, 200],
    ] as const
    const garment = { ...remnant(outline, { surface: 'one-way' }), id: 'cloth' }
    const question = asking(patternOf([wedge]), garment)
    const answer = answered(question, within(5))
    expect(answer).toMatchObject({ heads: 'down', lay: { verdict: 'fits' } })
    const { pieces } = reservationFrom(answer, ids('skirt'))
    expect(pieces).toMatchObject([{ piece: 'wedge', turn: 180 }])
    expect(
      reservationFaults({ ...reservationFrom(answer, ids('skirt')) }, clothOf(garment, records())),
    ).toEqual([])
    const [{ turn, mirrored, x, y, outline: frozen }] = pieces as [(typeof pieces)[number]]
    const drawn = answer.problem.pieces[0]!.outline
    expect(polygonMoved(polygonOriented(drawn, { turn, mirrored }), x, y)).toEqual(frozen)
  })

  it('that takes a hem over holds too', () => {
    const garment = { ...measuredCloth(300, 215, { hemmed: true }), id: 'cloth' }
    const shape = {
      form: 'outline',
      onFold: false,
      points: [
        { at: [0, 0], allowance: 20, use: 'hem' },
        { at: [200, 0], allowance: 0 },
        { at: [200, 180], allowance: 0 },
        { at: [0, 180], allowance: 0 },
      ],
    } as const
    const pattern = patternOf([aPiece({ id: 'front', copies: 1, shapes: { M: shape } })])
    const reservation = reserved(asking(pattern, garment, { ownHem: ['front'] }), 'top')
    expect(reservationFaults(reservation, clothOf(garment, records()))).toEqual([])
  })
})

describe('a check of cloth that is partly taken', () => {
  const garment = { ...measuredCloth(600, 400), id: 'cloth' }
  const half = patternOf([boxPiece('body', 299, 399)])

  const outline = rectangle(300, 400)
  const place = { piece: 'body', copy: 1, panel: 'cloth', turn: 0, mirrored: false, x: 0, y: 0, outline }
  const first: Reservation = { ...ids('bag'), pieces: [place], clearance: 0, spare: null }

  it('lays round what is reserved, and cannot where that leaves too little', () => {
    const taken = takenOf('cloth', records({ reservations: [first] }))
    const second = reserved(asking(half, garment, { taken }), 'rucksack')
    expect(overlapsOf([first, second])).toEqual([])
    const both = takenOf('cloth', records({ reservations: [first, second] }))
    expect(answered(asking(half, garment, { taken: both }), within(5)).lay.verdict).toBe('cannot')
    const without = takenOf('cloth', records({ reservations: [first, second] }), 'bag')
    const again = reserved(asking(half, garment, { taken: without }), 'bag')
    expect(overlapsOf([again, second])).toEqual([])
  })

  it('keeps its own gap from what is reserved', () => {
    const taken = takenOf('cloth', records({ reservations: [first] }))
    expect(answered(asking(half, garment, { taken, clearance: 3 }), within(5)).lay.verdict).toBe('cannot')
    const narrower = patternOf([boxPiece('body', 296, 399)])
    expect(answered(asking(narrower, garment, { taken, clearance: 3 }), within(5)).lay.verdict).toBe('fits')
  })

  it('lays into offcuts, round their holes, and no more into the panel they are of', () => {
    const offcuts = [{ id: 'o1', outline: rectangle(300, 100), flaws: [rectangle(20, 100, 100, 0)] }]
    const taken = { cut: ['cloth'], offcuts, reserved: [] }
    const ask = (width: number) =>
      answered(asking(patternOf([boxPiece('tie', width, 100)]), garment, { taken }), within(5))
    expect(ask(180).lay).toMatchObject({ verdict: 'fits', placements: [{ panel: 'o1' }] })
    expect(ask(190).lay.verdict).toBe('cannot')
  })
})

describe('what a project asks of a garment', () => {
  const garment = { ...measuredCloth(600, 400), id: 'cloth' }
  const sleeves = boxPiece('sleeve', 100, 150, { copies: 4, mirror: 'pairs' })
  const pattern = patternOf([
    boxPiece('body', 200, 300),
    sleeves,
    boxPiece('lining', 100, 100, { role: 'lining' }),
  ])
  const project = testProject({ id: 'top', pattern, version: 'all', size: 'M' })
  const laid = (piece: string, copy: number) => ({
    piece,
    copy,
    panel: 'cloth',
    turn: 0,
    mirrored: false,
    x: 0,
    y: 0,
    outline: rectangle(100, 100),
  })
  const cutOf = (...copies: readonly (readonly [string, number])[]) =>
    testCut({ project: 'top', garment: 'other', pieces: copies.map(([piece, copy]) => laid(piece, copy)) })

  it('is what is not cut yet, and null when all is', () => {
    const cuts = [cutOf(['body', 1], ['sleeve', 2], ['sleeve', 3])]
    const question = projectQuestion(project, garment, ['main'], records({ cuts }))
    expect(question?.copies).toEqual({ sleeve: [1, 4] })
    const all = [cutOf(['body', 1], ['sleeve', 1], ['sleeve', 2], ['sleeve', 3], ['sleeve', 4])]
    expect(projectQuestion(project, garment, ['main'], records({ cuts: all }))).toBeNull()
  })

  it.each([
    { cut: [1, 4], left: [2, 3] },
    { cut: [1], left: [2, 3, 4] },
    { cut: [1, 2], left: [3, 4] },
    { cut: [3, 4], left: [1, 2] },
    { cut: [2, 3, 4], left: [1] },
  ])(
    'reserves copies $left of pairs by their numbers when $cut are cut, the right side up',
    ({ cut, left }) => {
      const cuts = [cutOf(['body', 1], ...cut.map((copy) => ['sleeve', copy] as const))]
      const question = projectQuestion(project, garment, ['main'], records({ cuts })) as CheckQuestion
      const { pieces } = reserved(question, 'top')
      expect(pieces.map(({ piece, copy }) => [piece, copy]).sort()).toEqual(
        left.map((copy) => ['sleeve', copy]),
      )
      // The first half lies as drawn, the second turned over.
      for (const { copy, mirrored } of pieces) expect(mirrored).toBe(copy > 2)
    },
  )

  it('leaves the project’s other pieces where they are, and lays the asked ones anew', () => {
    const own: Reservation = {
      ...ids('top'),
      pieces: [
        { ...laid('lining', 1), outline: rectangle(300, 400) },
        { ...laid('body', 1), outline: rectangle(200, 300, 300, 0) },
      ],
      clearance: 0,
      spare: null,
    }
    const question = projectQuestion(project, garment, ['main'], records({ reservations: [own] }))
    expect(question?.taken?.reserved.map(({ piece }) => piece)).toEqual(['lining'])
    expect(question?.copies).toEqual({ body: [1], sleeve: [1, 2, 3, 4] })
  })
})
