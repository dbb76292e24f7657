import * as z from 'zod/mini'
import { failed, type Result } from '../../core/base/result.ts'
import { CLOTH_MAKES } from '../../core/base/terms.ts'
import { NOTION_KINDS } from '../../core/notions/notion.ts'
import { PATTERN_LIMITS } from '../../core/patterns/limits.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import { patternFaults } from '../../core/patterns/pattern-faults.ts'
import { readBySchema } from '../faults.ts'
import { id, length, MOST_POINTS, name, point, prose, stretch } from './fields.ts'

const outlinePoint = z.strictObject({
  at: point,
  curve: z.exactOptional(z.tuple([point, point])),
  allowance: length,
  use: z.exactOptional(z.enum(['hem', 'casing'])),
  fixed: z.exactOptional(z.literal(true)),
  name: z.exactOptional(name),
  notches: z.exactOptional(
    z
      .array(z.strictObject({ at: length, count: z.literal([1, 2]) }))
      .check(z.maxLength(PATTERN_LIMITS.notches)),
  ),
})

const pieceShape = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('box'), width: length, height: length, allowance: length }),
  z.strictObject({
    form: z.literal('trapezoid'),
    top: length,
    bottom: length,
    height: length,
    allowance: length,
  }),
  z.strictObject({ form: z.literal('triangle'), width: length, height: length, allowance: length }),
  z.strictObject({ form: z.literal('half-moon'), width: length, height: length, allowance: length }),
  z.strictObject({ form: z.literal('circle'), diameter: length, allowance: length }),
  z.strictObject({
    form: z.literal('outline'),
    points: z.array(outlinePoint).check(z.maxLength(MOST_POINTS)),
    onFold: z.boolean(),
  }),
  z.strictObject({
    form: z.literal('strip'),
    edge: length,
    ratio: z.number().check(z.nonnegative(), z.lte(PATTERN_LIMITS.ratio)),
    height: length,
    folded: z.boolean(),
    endAllowance: length,
    sideAllowance: length,
    lap: z.exactOptional(length),
  }),
])

const patternPiece = z.strictObject({
  id,
  name,
  role: name,
  copies: z.number(),
  mirror: z.enum(['none', 'pairs', 'free']),
  grain: z.enum(['along', 'either', 'bias', 'any']),
  tilt: z.number(),
  needs: stretch,
  surface: z.enum(['as-panel', 'any']),
  optional: z.boolean(),
  biasToo: z.exactOptional(z.literal(true)),
  joins: z.exactOptional(z.enum(['across', 'along', 'either'])),
  turnAlike: z.exactOptional(id),
  shapes: z.record(z.string(), pieceShape),
})

const bySize = z.record(z.string(), length)
const count = z.number().check(z.nonnegative(), z.lte(1_000), z.multipleOf(1))

const notionNeed = z.strictObject({
  id,
  kind: z.enum(NOTION_KINDS),
  name,
  width: z.union([z.null(), length]),
  amount: z.discriminatedUnion('form', [
    z.strictObject({ form: z.literal('count'), count: z.record(z.string(), count) }),
    z.strictObject({ form: z.literal('table'), each: count, length: bySize }),
    z.strictObject({
      form: z.literal('formula'),
      each: count,
      edge: bySize,
      ratio: z.number().check(z.positive(), z.lte(PATTERN_LIMITS.ratio)),
      extra: length,
    }),
  ]),
  passes: z.exactOptional(bySize),
  versions: z.exactOptional(z.array(id)),
})

/** What a pattern's JSON looks like; `readPattern` also asks whether it makes sense. */
export const patternSchema = z.strictObject({
  id,
  name,
  about: prose,
  sizes: z.array(name).check(z.maxLength(PATTERN_LIMITS.sizes)),
  versions: z
    .array(z.strictObject({ id, name, pieces: z.array(id).check(z.maxLength(PATTERN_LIMITS.pieces)) }))
    .check(z.maxLength(PATTERN_LIMITS.versions)),
  pieces: z.array(patternPiece).check(z.maxLength(PATTERN_LIMITS.pieces)),
  clearance: z.number(),
  cloths: z.exactOptional(z.array(z.enum(CLOTH_MAKES)).check(z.maxLength(CLOTH_MAKES.length))),
  leastAllowance: z.exactOptional(z.number()),
  leastHem: z.exactOptional(z.number()),
  mostTilt: z.exactOptional(z.number()),
  notions: z.exactOptional(z.array(notionNeed).check(z.maxLength(50))),
  cautions: z.array(id).check(z.maxLength(20)),
})

/** A pattern in the making: its fields are of the right kind, and it may still have faults (patternFaults). */
export function readUnfinishedPattern(json: unknown): Result<Pattern> {
  return readBySchema(patternSchema, json)
}

/**
 * A pattern from stored, shared or shipped JSON. Either a pattern without faults, every piece of which has a cut outline in
 * every size, or what is wrong: fields missing, foreign or out of range first; when there are none, whatever does not
 * make sense (patternFaults).
 */
export function readPattern(json: unknown): Result<Pattern> {
  const result = readUnfinishedPattern(json)
  if (!result.ok) return result
  const faults = patternFaults(result.value)
  return faults.length > 0 ? failed(faults) : result
}
