import { describe, expect, it } from 'vitest'
import { polygonArea, polygonBox } from '../../../src/core/geometry/index.ts'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import { hemSaved, ownHem } from '../../../src/core/patterns/own-hem.ts'
import type { OutlineShape } from '../../../src/core/patterns/pattern.ts'

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
    expect(ownHem({ form: 'box', width: 100, height: 100, allowance: 10 })).toBeNull()
  })
})
