import { describe, expect, it } from 'vitest'
import { deadlineAfter } from '../../../../src/core/base/deadline.ts'
import type { Polygon } from '../../../../src/core/geometry/types.ts'
import type { LayPiece } from '../../../../src/core/planning/lay-problem.ts'
import { newClothLength } from '../../../../src/core/planning/savings/new-cloth.ts'

const clock = () => performance.now()
const control = () => ({ seed: 1, clock, deadline: deadlineAfter(300, clock) })

function box(width: number, height: number, change: Partial<LayPiece> = {}): LayPiece {
  const outline: Polygon = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
  return {
    id: `${width} × ${height}`,
    count: 1,
    outline,
    mirror: 'none',
    grain: 'along',
    turns: null,
    tilt: 0,
    needs: { across: 0, along: 0 },
    surface: 'as-panel',
    cloth: 'main',
    optional: false,
    ...change,
  }
}

function length(pieces: readonly LayPiece[], width: number, clearance = 0) {
  return newClothLength({ role: 'main', clearance, pieces }, width, control()).length
}

describe('the length of new cloth', () => {
  it('of two pieces that lie side by side is the longer one’s', () => {
    expect(length([box(700, 600), box(700, 500)], 1400)).toBeCloseTo(600, 1)
  })

  it('runs along the grain: a long piece is not laid across', () => {
    expect(length([box(200, 1000)], 1400)).toBeCloseTo(1000, 1)
    expect(length([box(200, 1000, { grain: 'any' })], 1400)).toBeLessThan(1000)
  })

  it('of pieces one below the other is their sum and the gap between', () => {
    expect(length([box(900, 400), box(900, 300)], 1400, 10)).toBeCloseTo(710, 1)
  })

  it('counts optional pieces, and a hem of one’s own as any other edge', () => {
    const optional = box(1000, 200, { optional: true, sit: { edge: 0, must: true } })
    expect(length([box(1000, 400), optional], 1400)).toBeCloseTo(600, 1)
  })

  it('is not to be had for a piece wider than the cloth', () => {
    expect(length([box(1500, 300)], 1400)).toBeNull()
  })
})
