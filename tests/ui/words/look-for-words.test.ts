import { describe, expect, it } from 'vitest'
import type { Figures } from '../../../src/ui/state/look-for-list.ts'
import {
  figuresWords as figuresInWords,
  stretchWords,
  thingDetail,
} from '../../../src/ui/words/look-for-words.ts'
import { aPattern } from '../../support/pattern-builder.ts'

const CM = { units: 'cm', inchFraction: 8 } as const
const INCHES = { units: 'in', inchFraction: 8 } as const

const SHIRT: Figures = {
  kind: 't-shirt',
  stretch: { across: 50, along: 0 },
  enough: [
    { width: 540, length: 620 },
    { width: 490, length: 715 },
  ],
  tooSmall: [{ width: 480, length: 640 }],
  none: false,
  oneWay: true,
  label: 'M',
}

/** With plain spaces in the place of those that keep a figure and its unit together. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

function figuresWords(...asked: Parameters<typeof figuresInWords>) {
  const { enough, beside } = figuresInWords(...asked)
  return { enough: enough.map(plain), beside: beside.map(plain) }
}

describe('what to look for, in words', () => {
  it('is as one says it in the shop', () => {
    expect(stretchWords(SHIRT.stretch)).toBe('Stretching 50\u00a0% across')
    expect(figuresWords(SHIRT, CM)).toEqual({
      enough: ['From 54 cm pit to pit and 62 cm long', 'or 49 cm pit to pit, if 71.5 cm long'],
      beside: [
        'Usually from M on the label.',
        'Proved too small up to 48 cm at usual lengths; between, check it.',
      ],
    })
  })

  it('is in inches for those who measure so', () => {
    const inches = { ...SHIRT, enough: [{ width: 85 * 6.35, length: 98 * 6.35 }], tooSmall: [] }
    expect(figuresWords(inches, INCHES).enough).toEqual(['From 21 1/4 in pit to pit and 24 1/2 in long'])
  })

  it('gives every width of cloth by itself, and says that a pile takes more', () => {
    const enough = [900, 1100].map((width) => ({ width, length: 450 }))
    const cloth: Figures = {
      ...SHIRT,
      kind: 'cloth',
      enough,
      tooSmall: [{ width: 900, length: 350 }],
      label: null,
    }
    expect(figuresWords({ ...cloth, oneWay: false }, CM)).toEqual({
      enough: ['90 cm wide, from 45 cm long', '110 cm wide, from 45 cm long'],
      beside: [
        'Proved too short up to 35 cm; between, check it.',
        'With a pile or one-way print it may take a larger one.',
      ],
    })
  })

  it('tells a proof that there is none from a search in vain', () => {
    const none = { ...SHIRT, enough: [], label: null }
    expect(figuresWords({ ...none, none: true }, CM).enough[0]).toMatch(/proved/)
    const vain = figuresWords(none, CM)
    expect(vain.enough[0]).not.toMatch(/proved/i)
    expect(vain.beside).toEqual(['Proved too small up to 48 cm at usual lengths.'])
  })

  it('names size, version where there are several, and the only cloth', () => {
    const choice = { pattern: 'tote', version: 'plain', size: 'M', role: 'lining' }
    expect(thingDetail(aPattern(), choice)).toBe('size M, Lining only')
  })
})
