import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LengthStyle, readLength, writeLength } from '../../../src/core/base/length.ts'

/** The mm read from `text`, or the fault's message. */
function read(text: string, unit: 'cm' | 'in' = 'cm'): number | string {
  const result = readLength(text, unit, 'chest')
  return result.ok ? result.value : (result.faults[0]?.message ?? '')
}

describe('reading a length', () => {
  it.each([
    ['20', 'cm', 200],
    ['20', 'in', 508],
    ['36,5 cm', 'in', 365],
    ['36.5', 'cm', 365],
    ['  36,5  ', 'cm', 365],
    ['365 mm', 'in', 365],
    ['365mm', 'cm', 365],
    ['1,5 m', 'cm', 1500],
    ['.5', 'cm', 5],
    ['5.', 'cm', 50],
    ['14 1/2', 'in', 368.3],
    ['14-1/2', 'in', 368.3],
    ['14½', 'in', 368.3],
    ['14 ½ in', 'cm', 368.3],
    ['14.5"', 'cm', 368.3],
    ['14,5″', 'cm', 368.3],
    ['14.5”', 'cm', 368.3],
    ["14.5''", 'cm', 368.3],
    ['14.5 IN.', 'cm', 368.3],
    ['0.25 in', 'cm', 6.35],
    ['1 inch', 'cm', 25.4],
    ['2 inches', 'cm', 50.8],
    ['14 1/2 cm', 'in', 145],
    ['14 – 1/2', 'in', 368.3],
    ['1⁄2', 'in', 12.7],
    ['9/8', 'in', 28.575],
    ['0', 'cm', 0],
  ] as const)('reads %j with %s as default', (text, unit, mm) => {
    expect(read(text, unit)).toBe(mm)
  })

  it('does not glue a vulgar fraction to the digits before it', () => {
    expect(read('14½', 'in')).not.toBe(141 * 12.7)
  })

  it.each([
    ['', /empty/],
    ['   ', /empty/],
    ['wide', /not a length/],
    ['-3', /negative/],
    ['−3', /negative/],
    ['3 ft', /unknown unit "ft".*mm, cm, m, in or yd/],
    ["3'", /not a length/],
    ['1.234,5', /not a number/],
    ['1,2,3', /not a number/],
    ['14 8/8', /not below 1/],
    ['14.5 1/2', /not a number/],
    ['5/0', /nothing below its line/],
    ['1/', /not a number/],
    ['1e3', /not a length/],
    ['Infinity', /not a length/],
    ['.', /not a number/],
    ['99999999', /longer than 100 m/],
    ['1234567890123456', /more digits/],
    ['36 cm cm', /not a length/],
  ])('refuses %j', (text, message) => {
    expect(read(text)).toMatch(message)
  })

  it('names the field', () => {
    expect(readLength('x', 'cm', 'measures.chest')).toMatchObject({ faults: [{ field: 'measures.chest' }] })
  })

  it('never throws and never gives anything but a length in range', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'0123456789 .,/-½⅝"\'′″cmin'), maxLength: 12 })
    fc.assert(
      fc.property(signs, fc.constantFrom('cm' as const, 'in' as const), (text, unit) => {
        const result = readLength(text, unit)
        if (result.ok) expect(result.value >= 0 && result.value <= 100_000).toBe(true)
        else expect(result.faults[0]?.message).not.toBe('')
      }),
    )
  })
})

describe('writing a length', () => {
  const cm = (mm: number, rounding: LengthStyle['rounding'], decimalSign: '.' | ',' = '.') =>
    writeLength(mm, { unit: 'cm', decimalSign, rounding })
  const inches = (mm: number, rounding: LengthStyle['rounding'], denominator: 8 | 16 = 8) =>
    writeLength(mm, { unit: 'in', denominator, rounding })

  it('writes centimetres with one decimal and the sign it is given', () => {
    expect(cm(365, 'nearest')).toBe('36.5')
    expect(cm(365, 'nearest', ',')).toBe('36,5')
    expect(cm(200, 'nearest')).toBe('20.0')
    expect(cm(-0.2, 'nearest')).toBe('0.0')
    expect(cm(365.1, 'up')).toBe('36.6')
    expect(cm(365.9, 'down')).toBe('36.5')
  })

  it('does not take float noise for an excess', () => {
    expect(cm(0.1 * 3 * 1000, 'up')).toBe('30.0')
    expect(inches(14.5 * 25.4 + 1e-9, 'up')).toBe('14 1/2')
    expect(inches(14.5 * 25.4 - 1e-9, 'down')).toBe('14 1/2')
  })

  it('reduces fractions and leaves out what is nothing', () => {
    expect(inches(0, 'nearest')).toBe('0')
    expect(inches(12.7, 'nearest', 16)).toBe('1/2')
    expect(inches(25.4, 'nearest')).toBe('1')
    expect(inches(-368.3, 'nearest')).toBe('-14 1/2')
  })

  it('refuses what is no length', () => {
    expect(() => cm(Number.NaN, 'nearest')).toThrow(RangeError)
  })

  const style = fc.oneof(
    fc.record({ unit: fc.constant('cm' as const), decimalSign: fc.constantFrom('.' as const, ',' as const) }),
    fc.record({ unit: fc.constant('in' as const), denominator: fc.constantFrom(8 as const, 16 as const) }),
  )
  const step = (s: { unit: 'cm' } | { unit: 'in'; denominator: number }) =>
    s.unit === 'cm' ? 1 : 25.4 / s.denominator
  const length = fc.double({ min: 0, max: 5000, noNaN: true })

  it('is read back to within the rounding asked for', () => {
    fc.assert(
      fc.property(length, style, (mm, s) => {
        const back = (rounding: 'nearest' | 'up' | 'down') =>
          read(writeLength(mm, { ...s, rounding }), s.unit) as number
        expect(Math.abs(back('nearest') - mm)).toBeLessThanOrEqual(step(s) / 2 + 1e-6)
        expect(back('up')).toBeGreaterThan(mm - 1e-4)
        expect(back('up')).toBeLessThan(mm + step(s) + 1e-4)
        expect(back('down')).toBeLessThan(mm + 1e-4)
        expect(back('down')).toBeGreaterThan(mm - step(s) - 1e-4)
      }),
    )
  })

  it('survives being written again', () => {
    fc.assert(
      fc.property(
        length,
        style,
        fc.constantFrom('nearest' as const, 'up' as const, 'down' as const),
        (mm, s, rounding) => {
          const once = writeLength(mm, { ...s, rounding })
          expect(writeLength(read(once, s.unit) as number, { ...s, rounding })).toBe(once)
        },
      ),
    )
  })

  it('never writes a fraction that could be reduced or carried', () => {
    fc.assert(
      fc.property(length, fc.constantFrom(8 as const, 16 as const), (mm, denominator) => {
        const text = inches(mm, 'nearest', denominator)
        const fraction = /(\d+)\/(\d+)$/.exec(text)
        if (!fraction) return
        expect(Number(fraction[1]) % 2).toBe(1)
        expect(Number(fraction[1])).toBeLessThan(Number(fraction[2]))
      }),
    )
  })
})
