import * as z from 'zod/mini'
import { outlineSchema } from './outline.ts'

/** The only value of `format` that this reader knows. */
export const PROBLEM_FORMAT = 'cutworth-problem/1'

/** More copies of one piece than this is a slip of the keyboard. */
const MOST_COPIES = 1000

const text = z.string().check(z.minLength(1))
const notNegative = z.number().check(z.gte(0))

const panelSchema = z.strictObject({
  id: text,
  outline: outlineSchema,
  flaws: z._default(z.array(outlineSchema), []),
  stretch: z.optional(z.strictObject({ across: notNegative, along: notNegative })),
  surface: z._default(z.enum(['plain', 'one-way']), 'plain'),
  faces: z._default(z.literal([1, 2]), 1),
  cloth: z.optional(text),
})

const pieceSchema = z
  .strictObject({
    id: text,
    count: z._default(z.int().check(z.gte(1), z.lte(MOST_COPIES)), 1),
    outline: outlineSchema,
    mirror: z._default(z.enum(['none', 'pairs', 'free']), 'none'),
    grain: z._default(z.enum(['along', 'either', 'bias', 'any']), 'along'),
    turns: z.optional(z.array(z.number()).check(z.minLength(1))),
    tilt: z._default(z.number().check(z.gte(0), z.lte(10)), 0),
    needs: z._default(
      z.strictObject({ across: z._default(notNegative, 0), along: z._default(notNegative, 0) }),
      { across: 0, along: 0 },
    ),
    surface: z.optional(z.literal('any')),
    cloth: z.optional(text),
    optional: z._default(z.boolean(), false),
  })
  .check(
    z.refine(({ mirror, count }) => mirror !== 'pairs' || count % 2 === 0, {
      path: ['count'],
      error: 'must be even, as “mirror” is “pairs”',
    }),
  )

/** A list with something in it, each entry with an id of its own. */
function listById<Entry extends z.ZodMiniType<{ id: string }>>(entry: Entry) {
  return z.array(entry).check(
    z.minLength(1),
    z.check((context) => {
      const first = new Map<string, number>()
      context.value.forEach(({ id }, i) => {
        const taken = first.get(id)
        if (taken === undefined) first.set(id, i)
        else
          context.issues.push({
            code: 'custom',
            path: [i, 'id'],
            message: `must differ from every other id, and entry ${taken} is “${id}” too`,
            input: id,
          })
      })
    }),
  )
}

/** The file format `cutworth-problem/1`, with its defaults. */
export const problemSchema = z.strictObject({
  format: z.literal(PROBLEM_FORMAT),
  name: z._default(z.string(), ''),
  clearance: z._default(notNegative, 0),
  seconds: z._default(z.number().check(z.positive()), 10),
  panels: listById(panelSchema),
  pieces: listById(pieceSchema),
})

/** A problem file after reading: every default filled in. */
export type ProblemFile = z.infer<typeof problemSchema>

/** A problem file as it may be written: fields with defaults may be missing. */
export type ProblemFileInput = z.input<typeof problemSchema>
