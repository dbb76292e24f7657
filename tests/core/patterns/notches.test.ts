import { describe, expect, it } from 'vitest'
import type { Point } from '../../../src/core/geometry/types.ts'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import { notchesOf } from '../../../src/core/patterns/notches.ts'
import type { OutlinePoint, OutlineShape } from '../../../src/core/patterns/pattern.ts'
import { shapeFaults } from '../../../src/core/patterns/shape-faults.ts'
import { steppedShape } from '../../../src/core/patterns/size-step.ts'
import { demoPatterns } from '../../../src/terminal/bench/demo.ts'
import { distanceToLine } from '../../support/planar.ts'

/** Half of a shirt front on the fold x = 0: hem, side with a notch 30 up, slanting shoulder with two 10 along, neck. */
const HALF: readonly OutlinePoint[] = [
  { at: [0, 0], allowance: 20, use: 'hem' },
  { at: [100, 0], allowance: 10, name: 'side', notches: [{ at: 30, count: 1 }] },
  { at: [100, 200], allowance: 15, name: 'shoulder', notches: [{ at: 10, count: 2 }] },
  { at: [40, 280], allowance: 5 },
  { at: [0, 280], allowance: 0 },
]
const FRONT: OutlineShape = { form: 'outline', points: HALF, onFold: true }

function byPlace(shape: OutlineShape): readonly string[] {
  return notchesOf(shape)
    .map(({ at: [x, y], count, edge }) => `${count} ${edge} ${(x + 0).toFixed(2)} ${y.toFixed(2)}`)
    .sort()
}

describe('notches', () => {
  it('are carried square from the seam line to the cut edge, on both halves of a piece on the fold', () => {
    // The shoulder runs (-0.6, 0.8): ten along it (94, 208), 15 out of it along (0.8, 0.6).
    expect(byPlace(FRONT)).toEqual(
      [
        '1 side 110.00 30.00',
        '1 side -110.00 30.00',
        '2 shoulder 106.00 217.00',
        '2 shoulder -106.00 217.00',
      ].sort(),
    )
  })

  it('are the same whichever way the piece is drawn round', () => {
    const backwards = [...HALF].reverse().map((point, k): OutlinePoint => {
      const { at: end, notches, ...edge } = HALF.at(HALF.length - 2 - k) as OutlinePoint
      const length = Math.hypot(end[0] - point.at[0], end[1] - point.at[1])
      const turned = notches?.map(({ at, count }) => ({ at: length - at, count }))
      return { ...edge, at: point.at, ...(turned && { notches: turned }) }
    })
    expect(byPlace({ form: 'outline', points: backwards, onFold: true })).toEqual(byPlace(FRONT))
  })

  it('point from the cut edge to the seam line', () => {
    const [side] = notchesOf(FRONT)
    expect(side?.inward).toEqual([-1, 0])
  })

  it('of every demo piece lie on its cut edge', () => {
    let seen = 0
    for (const { pieces } of demoPatterns())
      for (const { shapes } of pieces)
        for (const shape of Object.values(shapes)) {
          const cut = cutOutline(shape)
          for (const { at } of notchesOf(shape)) {
            seen++
            const off = cut.map((from, k) => distanceToLine(at, [from, cut[(k + 1) % cut.length] as Point]))
            // A cut outline stands off the true one by up to 0.2 mm.
            expect(Math.min(...off)).toBeLessThan(0.21)
          }
        }
    expect(seen).toBeGreaterThan(200)
  })

  it('move with their edge when a size is stepped', () => {
    const larger = steppedShape(FRONT, { across: 0, along: 280 }) as OutlineShape
    expect(byPlace(larger)).toContain('1 side 110.00 60.00')
  })

  it('beyond the end of their edge are a fault that names them', () => {
    const points = HALF.map(
      (point, k): OutlinePoint =>
        k === 1
          ? {
              ...point,
              notches: [
                { at: 30, count: 1 },
                { at: 201, count: 2 },
              ],
            }
          : point,
    )
    expect(shapeFaults({ ...FRONT, points }).map(({ field }) => field)).toEqual(['points[1].notches[1].at'])
    expect(shapeFaults(FRONT)).toEqual([])
  })
})
