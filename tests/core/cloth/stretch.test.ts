import { describe, expect, it } from 'vitest'
import {
  growthPercent,
  recoveryPercent,
  stretchBand,
  stretchFromMarks,
} from '../../../src/core/cloth/stretch.ts'

describe('stretch from two marks', () => {
  // Arithmetic from the definition (stretched − relaxed) / relaxed.
  it.each([
    [100, 140, 40],
    [101.6, 127, 25],
    [101.6, 254, 150],
    [100, 100, 0],
  ])('%d mm reaching %d mm is %d %%', (relaxed, stretched, percent) => {
    const result = stretchFromMarks(relaxed, stretched)
    expect(result.ok && result.value).toBeCloseTo(percent, 9)
  })

  it.each([
    [100, 90, 'stretched'],
    [0, 90, 'relaxed'],
    [Number.NaN, 90, 'relaxed'],
    [100, Number.NaN, 'stretched'],
  ])('%d reaching %d is refused and names the field', (relaxed, stretched, field) => {
    expect(stretchFromMarks(relaxed, stretched)).toMatchObject({ ok: false, faults: [{ field }] })
  })

  it('tells growth from recovery of the stretch', () => {
    expect(growthPercent(100, 102)).toBeCloseTo(2, 9)
    expect(recoveryPercent(100, 140, 102)).toBeCloseTo(95, 9)
    expect(recoveryPercent(100, 100, 100)).toBe(100)
  })
})

describe('words for stretch', () => {
  // Common practice in home sewing: 0–25, 26–50, 51–75, above; half-open so that no figure falls between.
  it.each([
    [0, 'stable'],
    [25, 'stable'],
    [25.1, 'moderate'],
    [50, 'moderate'],
    [75, 'stretchy'],
    [75.5, 'super'],
    [150, 'super'],
  ] as const)('%d %% is %s', (percent, band) => {
    expect(stretchBand(percent)).toBe(band)
  })

  it('refuses less than none', () => {
    expect(() => stretchBand(-1)).toThrow(RangeError)
    expect(() => stretchBand(Number.NaN)).toThrow(RangeError)
  })
})
