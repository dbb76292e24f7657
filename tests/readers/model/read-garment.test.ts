import { describe, expect, it } from 'vitest'
import { readLength } from '../../../src/core/base/length.ts'
import { KIND_IDS } from '../../../src/core/garments/kind.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { readGarment } from '../../../src/readers/model/garment.ts'

const TEE = emptyGarment('t-shirt', 'g1')

function faultsOf(change: Record<string, unknown>): readonly string[] {
  const result = readGarment({ ...TEE, ...change })
  return result.ok ? [] : result.faults.map(({ field, message }) => `${field}: ${message}`)
}

describe('readGarment', () => {
  it.each(KIND_IDS)('takes an unmeasured %s as it is, through JSON and back', (kind) => {
    const garment = emptyGarment(kind, 'g1')
    expect(readGarment(JSON.parse(JSON.stringify(garment)))).toEqual({ ok: true, value: garment })
  })

  it('takes whatever length may be typed', () => {
    const typed = readLength('100 m', 'cm')
    const roll = { ...emptyGarment('cloth', 'g1'), measures: { 'cloth-length': typed.ok ? typed.value : 0 } }
    expect(roll.measures['cloth-length']).toBe(100_000)
    expect(readGarment(roll)).toEqual({ ok: true, value: roll })
    expect(readLength('101 m', 'cm').ok).toBe(false)
  })

  it('keeps flaws of every form', () => {
    const flaws = [
      { id: 'a', panel: 'front', kind: 'hole', shape: { form: 'round', centre: [10, 20], radius: 5 } },
      { id: 'b', panel: 'front', kind: 'print', shape: { form: 'box', from: [0, 0], to: [90, 60] } },
      {
        id: 'c',
        panel: 'back',
        kind: 'seam',
        shape: {
          form: 'line',
          points: [
            [0, 0],
            [0, 500],
          ],
          width: 10,
        },
      },
    ]
    expect(readGarment({ ...TEE, flaws })).toEqual({ ok: true, value: { ...TEE, flaws } })
  })

  it.each<[string, Record<string, unknown>, RegExp]>([
    ['an unknown kind', { kind: 'cape' }, /^kind: must be “t-shirt” or /],
    ['an unknown label size', { labelSize: 'XXXL' }, /^labelSize: must be null, or must be “104”/],
    ['a negative measure', { measures: { chest: -520 } }, /^measures\.chest: must be more than 0$/],
    [
      'an endless measure',
      { measures: { chest: Number.POSITIVE_INFINITY } },
      /^measures\.chest: must be a finite number$/,
    ],
    ['three faces', { cloth: { ...TEE.cloth, faces: 3 } }, /^cloth\.faces: must be 1 or 2$/],
    [
      'stretch by halves',
      { cloth: { ...TEE.cloth, stretch: { across: 50 } } },
      /^cloth\.stretch\.along: is missing; it must be a finite number$/,
    ],
    ['a foreign field', { owner: 'me' }, /^owner: is not known here/],
    [
      'a flaw without size',
      {
        flaws: [
          { id: 'a', panel: 'front', kind: 'hole', shape: { form: 'round', centre: [0, 0], radius: 0 } },
        ],
      },
      /^flaws\[0\]\.shape\.radius: must be more than 0$/,
    ],
    [
      'an outline that crosses itself',
      {
        kind: 'free-outline',
        outline: [
          [0, 0],
          [9, 9],
          [9, 0],
          [0, 9],
        ],
      },
      /^outline: crosses/,
    ],
    [
      'an outline of two points',
      {
        kind: 'free-outline',
        outline: [
          [0, 0],
          [9, 9],
        ],
      },
      /^outline: must have at least 3 entries$/,
    ],
  ])('names the field and what would be right: %s', (_, change, fault) => {
    expect(faultsOf(change)).toEqual([expect.stringMatching(fault)])
  })
})
