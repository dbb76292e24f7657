import { describe, expect, it } from 'vitest'
import type { Pattern } from '../../../src/core/patterns/index.ts'
import { patternFaults, SEAM_TYPES, seamAllowance } from '../../../src/core/patterns/index.ts'
import { allowanceChoices, cutWords, hintsOf, needsWords } from '../../../src/ui/words/pattern-words.ts'
import { aPattern, aPiece, BOX } from '../../support/pattern-builder.ts'

const CM = { units: 'cm', inchFraction: 8 } as const
const INCH = { units: 'in', inchFraction: 8 } as const

const hints = (pattern: Pattern) => hintsOf(pattern, patternFaults(pattern))

describe('what is still missing, in words that name the field', () => {
  it('says nothing of a pattern that is whole', () => {
    expect(hints(aPattern())).toEqual([])
  })

  it('asks for a name and a piece first, and for nothing else', () => {
    expect(
      hints(aPattern({ name: ' ', pieces: [], versions: [{ id: 'v', name: 'V', pieces: [] }] })),
    ).toEqual(['Give the pattern a name.', 'Add a piece.'])
  })

  it('names piece, size and figure, also where the size has spaces and points in its name', () => {
    const sizes = ['2.5 years', 'M']
    const shapes = { '2.5 years': { ...BOX, width: 0 }, M: BOX }
    expect(hints(aPattern({ sizes, pieces: [aPiece({ shapes })] }))).toEqual([
      'Body, size 2.5 years: type “Width”.',
    ])
  })

  it('calls a band’s height by the name that its field has', () => {
    const strip = {
      form: 'strip',
      edge: 400,
      ratio: 1,
      height: 0,
      folded: false,
      endAllowance: 0,
      sideAllowance: 0,
    } as const
    expect(hints(aPattern({ pieces: [aPiece({ shapes: { S: strip, M: strip } })] }))).toEqual([
      'Body, size S: type “Height when finished”.',
      'Body, size M: type “Height when finished”.',
    ])
  })

  it('counts a piece without a name', () => {
    expect(hints(aPattern({ pieces: [aPiece({ name: '' })] }))).toEqual(['Piece 1: give it a name.'])
  })

  it.each<[string, Partial<Parameters<typeof aPiece>[0]>, string]>([
    [
      'an odd number of a pair',
      { copies: 3, mirror: 'pairs' },
      'Body: mirrored pairs need an even number of copies.',
    ],
    ['a cloth without a name', { role: '' }, 'Body: name its cloth.'],
    ['a size without a shape', { shapes: { S: BOX } }, 'Body, size M: it has no shape yet.'],
  ])('tells %s', (_, part, said) => {
    expect(hints(aPattern({ pieces: [aPiece(part)] }))).toEqual([said])
  })

  it('asks for a piece in a version that has none', () => {
    const versions = [
      { id: 'a', name: 'Plain', pieces: ['body'] },
      { id: 'b', name: 'Lined', pieces: [] },
    ]
    expect(hints(aPattern({ versions }))).toEqual(['Version “Lined”: tick a piece.'])
  })
})

describe('a pattern in words', () => {
  it('says what the cloth must do', () => {
    expect(needsWords(aPattern({ clearance: 0 }), 'plain', CM)).toEqual(['It need not stretch.'])
    const stretchy = aPattern({ pieces: [aPiece({ needs: { across: 50, along: 25 } })] })
    expect(needsWords(stretchy, 'plain', CM)).toEqual([
      'Stretch at least 50 % across and 25 % along.',
      'Leave 4 mm between pieces.',
    ])
  })

  it('says how a piece is cut', () => {
    expect(cutWords(aPiece({ mirror: 'pairs', role: 'lining' }))).toBe(
      '2 ×, half of them turned over, Lining',
    )
  })
})

describe('seam allowances to choose from', () => {
  it.each([
    ['cm', CM, /-inch$/],
    ['inches', INCH, /^(woven|french|flat-felled)$/],
  ] as const)('offers every width that is used, once, in %s', (_, units, others) => {
    const widths = allowanceChoices(units).map(({ width }) => width)
    const used = SEAM_TYPES.filter(({ id }) => id !== 'none' && !others.test(id)).map(({ id }) =>
      seamAllowance(id),
    )
    expect(new Set(widths)).toEqual(new Set(used))
    expect(widths).toEqual([...new Set(widths)].sort((a, b) => a - b))
  })
})
