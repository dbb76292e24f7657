import { describe, expect, it } from 'vitest'
import { polygonArea } from '../../../src/core/geometry/polygon.ts'
import { piecesOf } from '../../../src/core/patterns/pieces-of.ts'
import { aPattern, aPiece } from '../../support/pattern-builder.ts'

const PATTERN = aPattern({
  pieces: [aPiece(), aPiece({ id: 'strap', name: 'Strap' }), aPiece({ id: 'pocket', shapes: {} })],
  versions: [
    { id: 'plain', name: 'Plain', pieces: ['body'] },
    { id: 'strapped', name: 'With a strap', pieces: ['strap', 'body'] },
    { id: 'broken', name: 'Broken', pieces: ['lid', 'pocket', 'body'] },
  ],
})

describe('piecesOf', () => {
  it('gives the pieces of the version in its order, cut outlines in the size asked', () => {
    const result = piecesOf(PATTERN, 'strapped', 'M')
    const pieces = result.ok ? result.value : []
    expect(pieces.map(({ piece }) => piece.id)).toEqual(['strap', 'body'])
    expect(pieces.map(({ outline }) => polygonArea(outline))).toEqual([240 * 320, 240 * 320])
  })

  it.each([
    ['an unknown version', 'lined', 'M', ['version']],
    ['an unknown size', 'plain', 'XL', ['size']],
    ['missing pieces and shapes', 'broken', 'S', ['pieces', 'pieces[2].shapes.S']],
  ])('names what is missing: %s', (_, version, size, fields) => {
    const result = piecesOf(PATTERN, version, size)
    expect(result.ok ? [] : result.faults.map(({ field }) => field)).toEqual(fields)
  })
})
