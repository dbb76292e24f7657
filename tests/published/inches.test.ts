import { describe, expect, it } from 'vitest'
import { readLength, writeLength } from '../../src/core/base/length.ts'

/**
 * The inch is 25.4 mm exactly (international yard and pound agreement, 1959); the rest is arithmetic that
 * can be checked by hand. That cut sizes are rounded up and available cloth down is common practice.
 */
const read = (text: string) => {
  const result = readLength(text, 'in')
  return result.ok ? result.value : result.faults
}
const write = (mm: number, denominator: 8 | 16, rounding: 'nearest' | 'up' | 'down' = 'nearest') =>
  writeLength(mm, { unit: 'in', denominator, rounding })

describe('inches', () => {
  it.each([
    ['1/16', 1.5875],
    ['1/8', 3.175],
    ['1/4', 6.35],
    ['3/8', 9.525],
    ['1/2', 12.7],
    ['5/8', 15.875],
    ['3/4', 19.05],
    ['7/8', 22.225],
    ['1', 25.4],
    ['1 yd', 914.4],
    ['60', 1524],
  ])('reads %s as its length in mm', (text, mm) => {
    expect(read(text)).toBe(mm)
  })

  it.each(['16 5/8', '16-5/8', '16 5/8"', '16.625', '16⅝'])('reads %s as 422.275 mm', (text) => {
    expect(read(text)).toBe(422.275)
  })

  it.each([
    [100, 8, '3 7/8'],
    [100, 16, '3 15/16'],
    [520, 8, '20 1/2'],
    [10, 8, '3/8'],
    [15, 8, '5/8'],
    [6, 8, '1/4'],
    [15.97 * 25.4, 8, '16'],
  ] as const)('writes %f mm to the nearest 1/%i', (mm, denominator, text) => {
    expect(write(mm, denominator)).toBe(text)
  })

  it('rounds a cut size up and the cloth at hand down', () => {
    expect(write(520, 8, 'up')).toBe('20 1/2')
    expect(write(520, 8, 'down')).toBe('20 3/8')
  })
})
