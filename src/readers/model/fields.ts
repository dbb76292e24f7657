import * as z from 'zod/mini'
import { LONGEST_TYPED } from '../../core/base/length.ts'
import { polygonIsSimple } from '../../core/geometry/simple.ts'
import type { Polygon } from '../../core/geometry/types.ts'
import { PATTERN_LIMITS } from '../../core/patterns/limits.ts'

/**
 * Building blocks of the model's schemas, with limits that nothing a person sews reaches. A number is always finite:
 * `z.number()` refuses NaN and the infinities.
 */

/** Longest length in the model: whatever may be typed may be kept. Patterns have narrower limits of their own. */
const LONGEST = LONGEST_TYPED

/** Most points of one outline or stroke. */
export const MOST_POINTS = PATTERN_LIMITS.points

export const id = z.string().check(z.minLength(1), z.maxLength(100))
export const name = z.string().check(z.maxLength(200))
export const prose = z.string().check(z.maxLength(5_000))

/** A length or allowance, which may be 0. */
export const length = z.number().check(z.nonnegative(), z.lte(LONGEST))

/** Of a thing that is there. */
export const size = z.number().check(z.positive(), z.lte(LONGEST))

export const coordinate = z.number().check(z.gte(-LONGEST), z.lte(LONGEST))
export const point = z.tuple([coordinate, coordinate])
export const polygon = z.array(point).check(z.minLength(3), z.maxLength(MOST_POINTS))

/** A check that it is clear what the outline's inside is. Too few corners are told by themselves. */
export const simple = z.refine<Polygon>((outline) => outline.length < 3 || polygonIsSimple(outline), {
  error: 'must neither cross nor touch itself',
})

export const stretch = z.strictObject({
  across: z.number().check(z.nonnegative(), z.lte(1_000)),
  along: z.number().check(z.nonnegative(), z.lte(1_000)),
})

export const surface = z.enum(['plain', 'one-way'])

/** In the user's own money. */
export const money = z.number().check(z.nonnegative(), z.lte(1_000_000))

/** How many of something. */
export const count = z.int().check(z.nonnegative(), z.lte(1_000_000))

/** ms since 1970, up to the year 5138. */
export const time = z.int().check(z.nonnegative(), z.lte(100_000_000_000_000))
