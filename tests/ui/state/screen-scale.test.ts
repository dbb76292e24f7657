import { describe, expect, it } from 'vitest'
import { CARD_HEIGHT, relaxedLength, stretchAt } from '../../../src/ui/state/screen-scale.ts'

describe('stretch by two marks', () => {
  it('is (stretched − relaxed) / relaxed: 10 cm that reach 14 cm stretch 40 %', () => {
    expect(stretchAt(100, 140)).toBe(40)
    expect(stretchAt(30, 42)).toBe(40)
  })

  it('rounds down and is never negative', () => {
    expect(stretchAt(30, 41.99)).toBe(39)
    expect(stretchAt(50, 40)).toBe(0)
  })
})

describe('the relaxed length', () => {
  it('leaves room on the ruler for the stretch needed and some more', () => {
    for (const ruler of [45, 60, 90, 150]) {
      for (const need of [0, 25, 50, 100]) {
        const relaxed = relaxedLength(ruler, need)
        if (relaxed > 20) expect(relaxed * (1 + need / 100)).toBeLessThan(ruler)
      }
    }
  })

  it('is the longest that does', () => {
    expect(relaxedLength(100, 30)).toBe(60)
    expect(relaxedLength(55, 30)).toBe(30)
  })
})

it('the card is the ID-1 card of ISO/IEC 7810: 53.98 mm high', () => {
  expect(CARD_HEIGHT).toBe(53.98)
})
