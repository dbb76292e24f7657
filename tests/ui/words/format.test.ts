import { describe, expect, it } from 'vitest'
import {
  readNumber,
  writeArea,
  writeBare,
  writeHundredths,
  writePercent,
  writePrice,
  writeSmall,
  writeWithUnit,
} from '../../../src/ui/words/format.ts'

const CM = { units: 'cm', inchFraction: 8 } as const
const EIGHTHS = { units: 'in', inchFraction: 8 } as const
const SIXTEENTHS = { units: 'in', inchFraction: 16 } as const

describe('lengths on the screen', () => {
  it('drop a decimal that says nothing', () => {
    expect(writeBare(520, CM)).toBe('52')
    expect(writeBare(365, CM)).toBe('36.5')
  })

  it('are written in her fraction of an inch', () => {
    expect(writeWithUnit(520, EIGHTHS)).toBe('20 1/2 in')
    expect(writeWithUnit(100, EIGHTHS)).toBe('3 7/8 in')
    expect(writeWithUnit(100, SIXTEENTHS)).toBe('3 15/16 in')
  })

  it('to spare are rounded down, and small metric ones are in millimetres', () => {
    expect(writeSmall(6.9, CM)).toBe('6 mm')
    expect(writeSmall(34.9, CM)).toBe('3.4 cm')
    expect(writeSmall(9.5, EIGHTHS)).toBe('1/4 in')
  })
})

describe('prices and areas', () => {
  it('have two decimals or none', () => {
    expect([4, 3.5, 2.75].map(writePrice)).toEqual(['4', '3.50', '2.75'])
    expect([0.1, 0.75, 2].map(writeHundredths)).toEqual(['0.1', '0.75', '2'])
  })

  it('are in square metres, or in square yards of 0.8361 m²', () => {
    expect(writeArea(620_000, CM)).toBe('0.62\u00a0m²')
    expect(writeArea(1_672_254.72, EIGHTHS)).toBe('2.00\u00a0yd²')
  })
})

describe('numbers', () => {
  it('are read with a decimal comma or point', () => {
    expect(readNumber(' 12,5 ')).toBe(12.5)
    expect(readNumber('12.5')).toBe(12.5)
  })

  it('are none when empty or something else', () => {
    expect(readNumber(' ')).toBeNull()
    expect(readNumber('12 %')).toBeNull()
  })

  it('of stretch carry their sign', () => {
    expect(writePercent(37.25)).toBe('37.3 %')
  })
})
