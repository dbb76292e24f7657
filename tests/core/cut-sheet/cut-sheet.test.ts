import { describe, expect, it } from 'vitest'
import { cutSheet } from '../../../src/core/cut-sheet/cut-sheet.ts'
import { marksOf } from '../../../src/core/cut-sheet/marks.ts'
import { pointInPolygon, polygonMoved, polygonOriented } from '../../../src/core/geometry/index.ts'
import type { Point, Polygon } from '../../../src/core/geometry/types.ts'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import type { PieceShape } from '../../../src/core/patterns/index.ts'
import type { LaidPiece } from '../../../src/core/stash/reservation.ts'
import { testPattern } from '../../support/storage.ts'

const PANEL: Polygon = [
  [0, 0],
  [600, 0],
  [600, 700],
  [0, 700],
]

/** Half a shirt front on the fold at x = 0: hem 20 at the bottom, seams elsewhere. */
const FRONT: PieceShape = {
  form: 'outline',
  onFold: true,
  points: [
    { at: [0, 0], allowance: 20, use: 'hem' },
    { at: [200, 0], allowance: 6 },
    { at: [200, 300], allowance: 6 },
    { at: [0, 300], allowance: 0 },
  ],
}
const BAND: PieceShape = {
  form: 'strip',
  edge: 400,
  ratio: 0.8,
  height: 30,
  folded: true,
  endAllowance: 6,
  sideAllowance: 6,
}

function laid(piece: string, shape: PieceShape, place: Partial<LaidPiece> = {}): LaidPiece {
  const at = { copy: 1, panel: 'front', turn: 0, mirrored: false, x: 250, y: 100, ...place }
  return { piece, ...at, outline: polygonMoved(polygonOriented(cutOutline(shape), at), at.x, at.y) }
}

const project = {
  size: 'M',
  pattern: testPattern({
    sizes: ['M'],
    pieces: [
      ['front', FRONT],
      ['band', BAND],
    ].map(([id, shape]) => ({
      id: id as string,
      name: id as string,
      role: 'main',
      copies: 1,
      mirror: 'none',
      grain: 'along',
      tilt: 0,
      needs: { across: 0, along: 0 },
      surface: 'as-panel',
      optional: false,
      shapes: { M: shape as PieceShape },
    })),
  }),
}

describe('a cut sheet', () => {
  it('cuts the large piece first and keeps copies together', () => {
    const pieces = [
      laid('band', BAND, { copy: 2, y: 600 }),
      laid('front', FRONT),
      laid('band', BAND, { copy: 1, y: 500 }),
    ]
    const sheet = cutSheet(PANEL, pieces, project)
    expect(sheet.pieces.map(({ laid: { piece, copy } }) => `${piece}#${copy}`)).toEqual([
      'front#1',
      'band#1',
      'band#2',
    ])
  })

  it('reads a piece’s corners from two edges of the panel', () => {
    // Cut corners of the front: hem 20 below and 6 beside the seam line, so from (44, 80) to (456, 406).
    const sheet = cutSheet(PANEL, [laid('front', FRONT)], project)
    const levels = sheet.pieces[0]?.points?.map(({ from }) => Math.round(from[0]))
    expect(levels?.sort((a, b) => a - b)).toEqual([80, 406])
  })

  it('has no marks for a piece the pattern does not know, and none of its lines are lost', () => {
    const sheet = cutSheet(PANEL, [laid('front, upper part', FRONT)], project)
    expect(sheet.pieces[0]?.marks).toEqual([])
    expect(sheet.pieces[0]?.points).not.toBeNull()
  })
})

describe('the notches', () => {
  /** One on the right side, 100 up from the hem; two on the left, 100 down from the top. */
  const NOTCHED: PieceShape = {
    form: 'outline',
    onFold: false,
    points: [
      { at: [0, 0], allowance: 20, use: 'hem' },
      { at: [200, 0], allowance: 6, name: 'front seam', notches: [{ at: 100, count: 1 }] },
      { at: [200, 300], allowance: 6 },
      { at: [0, 300], allowance: 6, name: 'back seam', notches: [{ at: 100, count: 2 }] },
    ],
  }
  const pattern = {
    ...project.pattern,
    pieces: project.pattern.pieces.map((p) => ({ ...p, shapes: { M: NOTCHED } })),
  }
  const told = (place: Partial<LaidPiece>) =>
    cutSheet(PANEL, [laid('front', NOTCHED, place)], { ...project, pattern }).pieces[0]?.notches ?? []

  it('lie where the cut edge is, at distances that a tape can find', () => {
    // Laid at (250, 100) on a panel whose edges run along y = 0 and one of its sides.
    const [front, back] = told({})
    expect([front?.edge, front?.count, front?.at]).toEqual(['front seam', 1, [456, 200]])
    expect([back?.edge, back?.count, back?.at]).toEqual(['back seam', 2, [244, 300]])
    expect(front?.from?.[0]).toBeCloseTo(200)
    expect(back?.from?.[0]).toBeCloseTo(300)
  })

  it('turn with the piece, and change sides when it is turned over', () => {
    const [turned] = told({ turn: 180, x: 450, y: 400 })
    expect(turned?.at.map(Math.round)).toEqual([244, 300])
    expect(turned?.inward.map((v) => Math.round(v) + 0)).toEqual([1, 0])
    const [over] = told({ mirrored: true, x: 450 })
    expect(over?.at.map(Math.round)).toEqual([244, 200])
    expect(over?.inward.map(Math.round)).toEqual([1, 0])
  })

  it('are none on a piece the pattern does not know', () => {
    const sheet = cutSheet(PANEL, [laid('front, upper part', NOTCHED)], { ...project, pattern })
    expect(sheet.pieces[0]?.notches).toEqual([])
  })
})

describe('the marks to transfer', () => {
  it('of a front on the fold are its grain, its centre and the line its hem is turned at', () => {
    const marks = marksOf(FRONT, laid('front', FRONT))
    expect(marks.map(({ kind, depth }) => [kind, depth])).toEqual([
      ['grain', 0],
      ['centre', 0],
      ['hem', 20],
    ])
    const hem = marks.find(({ kind }) => kind === 'hem')
    const xs = hem?.line.map(([x]) => x) ?? []
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([50, 450])
    expect(hem?.line.every(([, y]) => y === 100)).toBe(true)
  })

  it('have their grain on the cloth, even of a piece whose middle is hollow', () => {
    // A deep half ring: its box's middle is no part of it.
    const ring = (radius: number, k: number) =>
      [radius * Math.cos((k * Math.PI) / 12), radius * Math.sin((k * Math.PI) / 12)] as const
    const points = [
      ...Array.from({ length: 13 }, (_, k) => ring(300, k)),
      ...Array.from({ length: 13 }, (_, k) => ring(230, 12 - k)),
    ].map((at) => ({ at, allowance: 0 }))
    const brim: PieceShape = { form: 'outline', onFold: false, points }
    for (const turn of [0, 90, 217]) {
      const piece = laid('brim', brim, { turn })
      const [from, to] = marksOf(brim, piece)[0]?.line ?? []
      for (const share of [0, 0.5, 1]) {
        const on = [0, 1].map((axis) => (from?.[axis] ?? 0) * (1 - share) + (to?.[axis] ?? 0) * share)
        expect(pointInPolygon(on as unknown as Point, piece.outline)).toBe(1)
      }
    }
  })

  it('turn with the piece', () => {
    const centre = (turn: number) =>
      marksOf(FRONT, laid('front', FRONT, { turn })).find(({ kind }) => kind === 'centre')?.line
    expect(centre(0)?.map(([x]) => x)).toEqual([250, 250])
    expect(centre(90)?.map(([, y]) => y)).toEqual([100, 100])
  })

  it('of a band are half and quarters of its flat length (common practice)', () => {
    const xs = marksOf(BAND, laid('band', BAND)).map(({ line }) => line[0]?.[0])
    // 400 × 0.8 = 320 flat, from x = 250 on.
    expect(xs).toEqual([330, 410, 490])
  })

  it('of a waistband with an underlap are those of its seam, and where the underlap begins', () => {
    const lapped: PieceShape = { ...BAND, ratio: 1, lap: 30 }
    const marks = marksOf(lapped, laid('band', lapped)).map(({ kind, line }) => [kind, line[0]?.[0]])
    expect(marks).toEqual([
      ['quarter', 350],
      ['quarter', 450],
      ['quarter', 550],
      ['lap', 650],
    ])
  })

  it('of a disc are its grain and the quarters of its edge', () => {
    const disc: PieceShape = { form: 'circle', diameter: 100, allowance: 10 }
    const [grain, ...round] = marksOf(disc, laid('crown', disc, { x: 0, y: 0 }))
    expect(grain?.kind).toBe('grain')
    expect(round.map(({ line }) => line[0]?.map(Math.round))).toEqual([
      [110, 50],
      [50, 110],
      [-10, 50],
      [50, -10],
    ])
  })
})
