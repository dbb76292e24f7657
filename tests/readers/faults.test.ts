import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import type { Fault } from '../../src/core/base/result.ts'
import { readBySchema } from '../../src/readers/faults.ts'

const SHAPE = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('box'), width: z.number().check(z.positive()) }),
  z.strictObject({ form: z.literal('circle'), diameter: z.number() }),
])
const SCHEMA = z.strictObject({
  name: z.string().check(z.minLength(1), z.maxLength(5)),
  count: z.int(),
  kind: z.enum(['knit', 'woven']),
  faces: z.literal([1, 2]),
  point: z.tuple([z.number(), z.number()]),
  shapes: z.record(z.string().check(z.minLength(1)), SHAPE),
  note: z.union([z.null(), z.array(z.number())]),
  even: z.number().check(z.refine((n) => n % 2 === 0, { error: 'must be even' })),
})
const RIGHT = {
  name: 'tee',
  count: 2,
  kind: 'knit',
  faces: 1,
  point: [0, 1],
  shapes: { M: { form: 'box', width: 3 } },
  note: null,
  even: 4,
}

function faultsFor(change: Record<string, unknown>): readonly Fault[] {
  const result = readBySchema(SCHEMA, { ...RIGHT, ...change })
  return result.ok ? [] : result.faults
}

describe('readBySchema', () => {
  it('gives the value when nothing is wrong', () => {
    expect(readBySchema(SCHEMA, RIGHT)).toEqual({ ok: true, value: RIGHT })
  })

  it.each<[string, Record<string, unknown>, string, string]>([
    ['too short a text', { name: '' }, 'name', 'must not be empty'],
    ['too long a text', { name: 'jumper' }, 'name', 'must have at most 5 characters'],
    ['a fraction', { count: 1.5 }, 'count', 'must be a whole number'],
    ['not a number', { even: Number.NaN }, 'even', 'must be a finite number'],
    ['no bound', { even: Number.POSITIVE_INFINITY }, 'even', 'must be a finite number'],
    ['a foreign word', { kind: 'felt' }, 'kind', 'must be “knit” or “woven”'],
    ['a foreign figure', { faces: 3 }, 'faces', 'must be 1 or 2'],
    ['a missing field', { name: undefined }, 'name', 'is missing; it must be text'],
    ['a missing word', { kind: undefined }, 'kind', 'is missing; it must be “knit” or “woven”'],
    ['a foreign field', { colour: 'red' }, 'colour', 'is not known here; remove it'],
    ['too many coordinates', { point: [1, 2, 3] }, 'point', 'must have at most 2 entries'],
    ['text for a coordinate', { point: [1, 'x'] }, 'point[1]', 'must be a finite number'],
    [
      'a bad figure deep down',
      { shapes: { M: { form: 'box', width: 0 } } },
      'shapes.M.width',
      'must be more than 0',
    ],
    [
      'a key with a space',
      { shapes: { '2 XL': { form: 'box' } } },
      'shapes["2 XL"].width',
      'is missing; it must be a finite number',
    ],
    ['an unknown form', { shapes: { M: { form: 'star' } } }, 'shapes.M.form', 'must be “box” or “circle”'],
    [
      'a nameless key',
      { shapes: { '': { form: 'box', width: 1 } } },
      'shapes[""]',
      'has a name that must not be empty',
    ],
    ['no alternative', { note: 'x' }, 'note', 'must be null, or must be a list'],
    ['an alternative that nearly is', { note: [1, 'x'] }, 'note[1]', 'must be a finite number'],
    ['a check of our own', { even: 3 }, 'even', 'must be even'],
  ])('names the field and what would be right: %s', (_, change, field, message) => {
    expect(faultsFor(change)).toEqual([{ field, message }])
  })

  it('names the document when all of it is wrong', () => {
    expect(readBySchema(SCHEMA, 7)).toEqual({
      ok: false,
      faults: [{ field: 'document', message: 'must be an object' }],
    })
  })

  it('lists every fault, but no more than tell anybody anything', () => {
    expect(faultsFor({ name: '', count: 0.5, kind: 1 })).toHaveLength(3)
    const many = readBySchema(
      z.array(z.number()),
      Array.from({ length: 1000 }, () => 'x'),
    )
    expect(many.ok ? [] : many.faults).toHaveLength(51)
    expect(many.ok ? null : many.faults.at(-1)).toEqual({ field: 'document', message: 'has 950 faults more' })
  })
})
