import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allDrafts } from '../../../demo-data/drafting/all.ts'
import { ringsArea, ringsDifference } from '../../../src/core/geometry/clipper.ts'
import { type Point, type Polygon, polygonArea, polygonBox } from '../../../src/core/geometry/index.ts'
import { polygonIsSimple } from '../../../src/core/geometry/simple.ts'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import { hasStraightHem } from '../../../src/core/patterns/hem-edges.ts'
import { hemSaved, type OwnHem, ownHem } from '../../../src/core/patterns/own-hem.ts'
import type { OutlineShape, PieceShape } from '../../../src/core/patterns/pattern.ts'

/** Half a skirt front on the fold x = 0: 100 at the hem, 80 at the waist, 300 long; 10 at the side, 25 at the hem. */
const half: OutlineShape = {
  form: 'outline',
  onFold: true,
  points: [
    { at: [0, 0], allowance: 25, use: 'hem' },
    { at: [100, 0], allowance: 10 },
    { at: [100, 300], allowance: 10 },
    { at: [0, 300], allowance: 0 },
  ],
}

describe('a piece that takes over a hem', () => {
  it('has no allowance there, and one edge on it from side to side, unfolded', () => {
    const own = ownHem(half)
    expect(polygonBox(own?.outline ?? [])).toEqual({ minX: -110, minY: 0, maxX: 110, maxY: 310 })
    const ends = [own?.outline[own.edge], own?.outline[(own.edge + 1) % own.outline.length]]
    expect(ends).toEqual([
      [-110, 0],
      [110, 0],
    ])
    expect(polygonArea(cutOutline(half)) - polygonArea(own?.outline ?? [])).toBeCloseTo(220 * 25, 6)
    expect(hemSaved(half)).toBe(25)
  })

  it('goes by the seam line, whichever way it is drawn', () => {
    const full: OutlineShape = {
      form: 'outline',
      onFold: false,
      points: [
        { at: [0, 0], allowance: 10 },
        { at: [0, 300], allowance: 10 },
        { at: [200, 300], allowance: 10 },
        { at: [200, 0], allowance: 25, use: 'hem' },
      ],
    }
    expect(polygonBox(ownHem(full)?.outline ?? [])).toEqual({ minX: -10, minY: 0, maxX: 210, maxY: 310 })
  })

  it('is none without a hem, with a curved one, or with two parts of one line that something parts', () => {
    const seams = half.points.map(({ at, allowance }) => ({ at, allowance }))
    expect(ownHem({ ...half, points: seams })).toBeNull()
    const [first, ...rest] = half.points
    const curved = {
      ...first!,
      curve: [
        [30, -5],
        [70, -5],
      ] as const,
    }
    expect(ownHem({ ...half, points: [curved, ...rest] })).toBeNull()
    expect(hemSaved({ ...half, points: [curved, ...rest] })).toBe(0)
    const notched: OutlineShape = {
      form: 'outline',
      onFold: false,
      points: [
        { at: [0, 0], allowance: 20, use: 'hem' },
        { at: [100, 0], allowance: 5 },
        { at: [100, 50], allowance: 5 },
        { at: [140, 50], allowance: 5 },
        { at: [140, 0], allowance: 20, use: 'hem' },
        { at: [260, 0], allowance: 5 },
        { at: [260, 200], allowance: 5 },
        { at: [0, 200], allowance: 5 },
      ],
    }
    expect(ownHem(notched)).toBeNull()
  })

  it('is none where a second hem, or the piece itself, goes on beyond the line', () => {
    const [first, side, ...rest] = half.points
    const bent = { at: [70, 0], allowance: 25, use: 'hem' } as const
    expect(ownHem({ ...half, points: [first!, bent, { ...side!, at: [100, 5] }, ...rest] })).toBeNull()
    const lower = { at: [70, 0], allowance: 10 } as const
    expect(ownHem({ ...half, points: [first!, lower, { ...side!, at: [100, -5] }, ...rest] })).toBeNull()
  })
})

/** How far the outline reaches beyond the line of its edge, and where that edge is. */
function standing({ outline, edge }: OwnHem) {
  const [[ax, ay], [bx, by]] = [outline[edge]!, outline[(edge + 1) % outline.length]!]
  const length = Math.hypot(bx - ax, by - ay)
  const out = outline.map(([x, y]) => ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length)
  return { beyond: Math.max(...out), length }
}

describe('corners at the hem', () => {
  it('end flush on its line where the sides slant outward', () => {
    // 100 wide at the hem and 160 at the top, 300 up: the sides lean out, 10 of allowance at right angles to them.
    const leaning: OutlineShape = {
      form: 'outline',
      onFold: false,
      points: [
        { at: [30, 0], allowance: 20, use: 'hem' },
        { at: [130, 0], allowance: 10 },
        { at: [160, 300], allowance: 10 },
        { at: [0, 300], allowance: 10 },
      ],
    }
    const own = ownHem(leaning)!
    const reach = (10 * Math.hypot(30, 300)) / 300
    expect(standing(own).beyond).toBeLessThan(1e-9)
    expect(standing(own).length).toBeCloseTo(100 + 2 * reach, 9)
    expect(own.outline).toHaveLength(4)
  })

  it('end flush on it for every shipped piece, and every plain shape of any measures', () => {
    const shapes = allDrafts().flatMap(({ pieces }) => pieces.flatMap((piece) => Object.values(piece.shapes)))
    const owned = shapes.filter(hasStraightHem).map(ownHem)
    expect(owned.length).toBeGreaterThan(40)
    for (const own of owned) expect(standing(own!).beyond).toBeLessThan(1e-6)
  })

  it('end flush on it whatever slants, curves and allowances there are', () => {
    const side = fc.record({
      x: fc.integer({ min: -150, max: 150 }),
      bow: fc.option(fc.integer({ min: -40, max: 40 }), { nil: null }),
      allowance: fc.integer({ min: 0, max: 30 }),
    })
    fc.assert(
      fc.property(side, side, fc.integer({ min: 0, max: 359 }), (right, left, turn) => {
        const angle = (turn * Math.PI) / 180
        const at = (x: number, y: number): Point => [
          x * Math.cos(angle) - y * Math.sin(angle),
          x * Math.sin(angle) + y * Math.cos(angle),
        ]
        const curve = (ax: number, bx: number, up: boolean, bow: number | null) => {
          const y = (share: number) => 300 * (up ? share : 1 - share)
          const x = (share: number) => ax + (bx - ax) * share + (bow as number)
          return bow === null ? {} : { curve: [at(x(1 / 3), y(1 / 3)), at(x(2 / 3), y(2 / 3))] as const }
        }
        const shape: OutlineShape = {
          form: 'outline',
          onFold: false,
          points: [
            { at: at(0, 0), allowance: 40, use: 'hem' },
            { at: at(400, 0), allowance: right.allowance, ...curve(400, 400 + right.x, true, right.bow) },
            { at: at(400 + right.x, 300), allowance: 12 },
            { at: at(left.x, 300), allowance: left.allowance, ...curve(left.x, 0, false, left.bow) },
          ],
        }
        const own = ownHem(shape)!
        expect(standing(own).beyond).toBeLessThan(1e-6)
        expect(polygonIsSimple(own.outline)).toBe(true)
        // All that is cut off lies beyond the line: what is left is the usual outline on this side of it.
        const whole = cutOutline(shape)
        const here = ringsDifference([whole], [beyondLine(at, 2000)])
        expect(polygonArea(own.outline)).toBeCloseTo(ringsArea(here), 0)
      }),
      { numRuns: 200 },
    )
  })
})

/** The half plane under the hem, as far as any piece goes. */
function beyondLine(at: (x: number, y: number) => Point, far: number): Polygon {
  return [at(-far, -far), at(far, -far), at(far, 0), at(-far, 0)]
}

describe('plain shapes', () => {
  const allowance = 10
  it.each<[PieceShape, number[], number]>([
    [{ form: 'box', width: 100, height: 60, allowance }, [-10, 0, 110, 70], 10],
    [{ form: 'trapezoid', bottom: 100, top: 100, height: 60, allowance }, [-10, 0, 110, 70], 10],
    [{ form: 'half-moon', width: 100, height: 60, allowance }, [-10, 0, 110, 70], 10],
    [
      { form: 'strip', edge: 50, ratio: 2, height: 60, folded: false, endAllowance: 5, sideAllowance: 12 },
      [-5, 0, 105, 72],
      12,
    ],
    [{ form: 'box', width: 100, height: 60, allowance: 0 }, [0, 0, 100, 60], 0],
  ])('%j stands on its lower edge', (shape, box, saved) => {
    const own = ownHem(shape)!
    const { minX, minY, maxX, maxY } = polygonBox(own.outline)
    expect([minX, minY, maxX, maxY]).toEqual(box.map((figure) => expect.closeTo(figure, 6)))
    expect(standing(own)).toMatchObject({ length: expect.closeTo(box[2]! - box[0]!, 6) })
    expect(standing(own).beyond).toBeLessThan(1e-6)
    expect(hemSaved(shape)).toBe(saved)
    expect(hasStraightHem(shape)).toBe(true)
  })

  it('of slanting sides stand flush on it', () => {
    for (const top of [40, 100, 200]) {
      const own = ownHem({ form: 'trapezoid', bottom: 100, top, height: 60, allowance })!
      expect(standing(own).beyond).toBeLessThan(1e-9)
      expect(own.outline).toHaveLength(4)
    }
    const own = ownHem({ form: 'triangle', width: 100, height: 80, allowance })!
    expect(standing(own).beyond).toBeLessThan(1e-9)
  })

  it('without a straight lower edge, or folded lengthwise, have none', () => {
    const strip = {
      form: 'strip',
      edge: 50,
      ratio: 2,
      height: 60,
      endAllowance: 5,
      sideAllowance: 12,
    } as const
    for (const shape of [
      { form: 'circle', diameter: 80, allowance },
      { ...strip, folded: true },
    ] as const) {
      expect(ownHem(shape)).toBeNull()
      expect(hemSaved(shape)).toBe(0)
      expect(hasStraightHem(shape)).toBe(false)
    }
  })
})
