import { describe, expect, it } from 'vitest'
import type { ToBuy } from '../../../src/core/notions/index.ts'
import { buyWords, kindWords, piecesWords } from '../../../src/ui/words/notion-words.ts'

const CM = { units: 'cm', inchFraction: 8 } as const
const INCH = { units: 'in', inchFraction: 8 } as const
const WAIST: ToBuy = { kind: 'elastic', names: ['Waist'], width: 25, lengths: [740], count: 0 }

describe('notions in words', () => {
  it('give widths in mm, a zip’s length in cm, both in inches where inches are used', () => {
    expect(kindWords('elastic', 25, CM)).toBe('Elastic, 25 mm wide')
    expect(kindWords('cord', 5, CM)).toBe('Cord, 5 mm thick')
    expect(kindWords('zip', 200, CM)).toBe('Zip, 20 cm long')
    expect(kindWords('button', null, CM)).toBe('Button')
    expect(kindWords('elastic', 9.525, INCH)).toBe('Elastic, 3/8 in wide')
  })

  it('round lengths to cut up, and count equal ones', () => {
    expect(piecesWords([706.4, 706.4, 450], CM)).toBe('2 × 70.7 cm and 45 cm')
  })

  it('say what to buy, of what, for what', () => {
    expect(buyWords(WAIST, CM)).toBe('Elastic, 25 mm wide: 74 cm, for “Waist”')
    expect(buyWords({ ...WAIST, lengths: [450, 450] }, CM)).toBe(
      'Elastic, 25 mm wide: 90 cm (2 × 45 cm), for “Waist”',
    )
    const zip: ToBuy = { kind: 'zip', names: ['Zip'], width: 200, lengths: [], count: 1 }
    expect(buyWords(zip, CM)).toBe('Zip, 20 cm long: 1')
  })
})
