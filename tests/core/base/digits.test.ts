import { describe, expect, it } from 'vitest'
import { latinDigits } from '../../../src/core/base/digits.ts'
import { readLength } from '../../../src/core/base/length.ts'

describe('digits of other scripts', () => {
  it.each([
    ['٠١٢٣٤٥٦٧٨٩', '0123456789'],
    ['۰۱۲۳۴۵۶۷۸۹', '0123456789'],
    ['०१२३४५६७८९', '0123456789'],
    ['０１２３４５６７８９', '0123456789'],
    ['٣٦٫٥', '36,5'],
    ['36.5 cm', '36.5 cm'],
    ['14½"', '14½"'],
    // The five alphabets of mathematical digits stand in one row of fifty.
    ['\u{1d7ce}\u{1d7d8}\u{1d7ff}', '009'],
  ])('%s are %s', (text, plain) => {
    expect(latinDigits(text)).toBe(plain)
  })

  it.each([
    ['٣٦٫٥', 365],
    ['۱۲', 120],
    ['٣٦٥ mm', 365],
    ['١٤ ١/٢ in', 368.3],
  ])('are read as lengths: %s', (text, mm) => {
    expect(readLength(text, 'cm')).toEqual({ ok: true, value: mm })
  })
})
