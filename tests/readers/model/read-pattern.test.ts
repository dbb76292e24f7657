import { describe, expect, it } from 'vitest'
import { readPattern } from '../../../src/readers/model/pattern.ts'
import { aPattern, aPiece, BOX } from '../../support/pattern-builder.ts'

function faultsOf(json: unknown): readonly string[] {
  const result = readPattern(json)
  return result.ok ? [] : result.faults.map(({ field, message }) => `${field}: ${message}`)
}

/** The pattern with its one piece changed, as foreign JSON. */
function withPiece(change: Record<string, unknown>): unknown {
  return { ...aPattern(), pieces: [{ ...aPiece(), ...change }] }
}

function withShape(shape: unknown): unknown {
  return withPiece({ shapes: { S: BOX, M: shape } })
}

describe('readPattern', () => {
  it('takes a right pattern as it is, through JSON and back', () => {
    const pattern = aPattern()
    expect(readPattern(JSON.parse(JSON.stringify(pattern)))).toEqual({ ok: true, value: pattern })
  })

  it('keeps that a piece may be cut on the bias too', () => {
    const pattern = withPiece({ biasToo: true })
    expect(readPattern(pattern)).toEqual({ ok: true, value: pattern })
  })

  it.each<[string, unknown, string]>([
    ['text', 'pattern', 'document: must be an object'],
    ['a list', [], 'document: must be an object'],
    ['a foreign field', { ...aPattern(), price: 3 }, 'price: is not known here; remove it'],
    ['no sizes', { ...aPattern(), sizes: undefined }, 'sizes: is missing; it must be a list'],
    ['a number for a size', { ...aPattern(), sizes: [38, 'M'] }, 'sizes[0]: must be text'],
    [
      'an unknown grain',
      withPiece({ grain: 'across' }),
      'pieces[0].grain: must be “along” or “either” or “bias” or “any”',
    ],
    [
      'an unknown form',
      withShape({ form: 'heart' }),
      'pieces[0].shapes.M.form: must be “box” or “trapezoid” or “triangle” or “half-moon” or “circle” or “outline” or “strip”',
    ],
    [
      'a width in words',
      withShape({ ...BOX, width: 'wide' }),
      'pieces[0].shapes.M.width: must be a finite number',
    ],
    [
      'a width beyond 20 m',
      withShape({ ...BOX, width: 20_001 }),
      'pieces[0].shapes.M.width: must be more than 0, at most 20000',
    ],
    [
      'no width at all',
      withShape({ ...BOX, width: 0 }),
      'pieces[0].shapes.M.width: must be more than 0, at most 20000',
    ],
    [
      'three coordinates',
      withShape({ form: 'outline', onFold: false, points: [{ at: [0, 0, 0], allowance: 0 }] }),
      'pieces[0].shapes.M.points[0].at: must have at most 2 entries',
    ],
    [
      'an unknown join',
      withPiece({ joins: 'anywhere' }),
      'pieces[0].joins: must be “across” or “along” or “either”',
    ],
    ['a bias that is not to be', withPiece({ biasToo: false }), 'pieces[0].biasToo: must be true'],
    ['a fractional copy', withPiece({ copies: 1.5 }), 'pieces[0].copies: must be a whole number'],
  ])('names the field and what would be right: %s', (_, json, fault) => {
    expect(faultsOf(json)).toEqual([fault])
  })

  it('refuses more points than shears can follow', () => {
    const points = Array.from({ length: 2_001 }, (_, k) => ({ at: [k, k * k], allowance: 0 }))
    expect(faultsOf(withShape({ form: 'outline', onFold: false, points }))[0]).toMatch(
      /points: must have at most 2000/,
    )
  })

  it('refuses what has the right types and makes no sense', () => {
    const bowTie = [
      [0, 0],
      [90, 90],
      [90, 0],
      [0, 90],
    ].map((at) => ({ at, allowance: 5 }))
    expect(faultsOf(withShape({ form: 'outline', onFold: false, points: bowTie }))[0]).toMatch(
      /^pieces\[0\]\.shapes\.M\.points: .*crosses/,
    )
    expect(faultsOf({ ...aPattern(), versions: [{ id: 'a', name: 'A', pieces: ['lid'] }] })[0]).toMatch(
      /^versions\[0\]\.pieces\[0\]: there is no piece “lid”/,
    )
  })
})
