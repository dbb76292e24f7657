import { describe, expect, it } from 'vitest'
import type { PatternPiece } from '../../../../src/core/patterns/pattern.ts'
import { newClothLengths } from '../../../../src/core/planning/savings/new-cloth.ts'
import { boxPiece, patternOf } from '../../../support/check-questions.ts'
import { withinSteps } from '../../../support/lay-problems.ts'

function lengths(pieces: readonly PatternPiece[], width: number, clearance = 0) {
  const making = { pattern: patternOf(pieces), version: 'all', size: 'M', clearance }
  const told = newClothLengths(making, width, withinSteps(3000))
  if (!told.ok) throw new Error(JSON.stringify(told.faults))
  return told.value.map(({ length }) => length)
}

describe('the length of new cloth', () => {
  it('of two pieces that lie side by side is the longer one’s', () => {
    expect(lengths([boxPiece('a', 700, 600), boxPiece('b', 700, 500)], 1400)[0]).toBeCloseTo(600, 1)
  })

  it('runs along the grain: a long piece is not laid across', () => {
    expect(lengths([boxPiece('a', 200, 1000)], 1400)[0]).toBeCloseTo(1000, 1)
    expect(lengths([boxPiece('a', 200, 1000, { grain: 'any' })], 1400)[0]).toBeLessThan(1000)
  })

  it('of pieces one below the other is their sum and the gap between', () => {
    expect(lengths([boxPiece('a', 900, 400), boxPiece('b', 900, 300)], 1400, 10)[0]).toBeCloseTo(710, 1)
  })

  it('counts every copy, and optional pieces too', () => {
    const pieces = [boxPiece('a', 1000, 400, { copies: 2 }), boxPiece('b', 1000, 200, { optional: true })]
    expect(lengths(pieces, 1400)[0]).toBeCloseTo(1000, 1)
  })

  it('is told role by role', () => {
    const pieces = [boxPiece('a', 1000, 400), boxPiece('b', 1000, 300, { role: 'lining' })]
    const [main, lining] = lengths(pieces, 1400)
    expect(main).toBeCloseTo(400, 1)
    expect(lining).toBeCloseTo(300, 1)
  })

  it('is of cloth that stretches as the pieces need', () => {
    const needs = { across: 50, along: 40 }
    expect(lengths([boxPiece('a', 700, 600, { needs }), boxPiece('b', 700, 500)], 1400)[0]).toBeCloseTo(
      600,
      1,
    )
  })

  it('is not to be had for a piece wider than the cloth', () => {
    expect(lengths([boxPiece('a', 1500, 300)], 1400)).toEqual([null])
  })
})
