import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fieldParts, fieldPath } from '../../../src/core/base/field-path.ts'

describe('a field’s path', () => {
  it.each([
    [['pieces', 2, 'shapes', 'M', 'width'], 'pieces[2].shapes.M.width'],
    [['shapes', '2 XL', 'width'], 'shapes["2 XL"].width'],
    [[], 'document'],
  ])('is written as the reader of a file would write it: %j', (parts, path) => {
    expect(fieldPath(parts)).toBe(path)
  })

  it('gives its parts back, whatever signs its keys have', () => {
    const key = fc.oneof(
      fc.string({ minLength: 1 }),
      fc.constantFrom('2.5 y', 'a"b', '[1]', 'XL', 'one size'),
    )
    fc.assert(
      fc.property(fc.array(fc.oneof(key, fc.nat(99)), { minLength: 1 }), (parts) => {
        expect(fieldParts(fieldPath(parts))).toEqual(parts)
      }),
    )
  })
})
