import * as z from 'zod/mini'
import { shortText } from '../../core/base/short-text.ts'
import { outlineSchema } from './outline.ts'

/** The only value of `format` that this reader knows. */
export const PROBLEM_FORMAT = 'cutworth-problem/1'

/** More copies of one piece than this is a slip of the keyboard. */
const MOST_COPIES = 1000

const text = z.string().check(z.minLength(1))
const notNegative = z.number().check(z.gte(0))

const edgeNumber = z.int().check(z.gte(0))

const panelSchema = z
  .strictObject({
    id: text,
    outline: outlineSchema,
    flaws: z._default(z.array(outlineSchema), []),
    stretch: z.optional(z.strictObject({ across: notNegative, along: notNegative })),
    surface: z._default(z.enum(['plain', 'one-way']), 'plain'),
    faces: z._default(z.literal([1, 2]), 1),
    cloth: z.optional(text),
    finished: z.optional(z.array(edgeNumber)),
    finishedDepth: z.optional(notNegative),
    motifs: z.optional(
      z.array(z.strictObject({ id: text, outline: outlineSchema, up: z.optional(z.number()) })),
    ),
  })
  .check(
    z.check((context) => {
      const { outline, finished = [] } = context.value
      finished.forEach((edge, i) => {
        const message =
          edgeFault(edge, outline.length) ?? (finished.indexOf(edge) < i ? 'is there already' : null)
        if (message) context.issues.push({ code: 'custom', path: ['finished', i], message, input: edge })
      })
    }),
  )

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
    turnAlike: z.optional(text),
    sit: z.optional(z.strictObject({ edge: edgeNumber, must: z._default(z.boolean(), false) })),
    shows: z.optional(
      z.strictObject({ motif: text, at: z.tuple([z.number(), z.number()]), within: notNegative }),
    ),
  })
  .check(
    z.check((context) => {
      const { outline, sit } = context.value
      const message = sit && edgeFault(sit.edge, outline.length)
      if (message) context.issues.push({ code: 'custom', path: ['sit', 'edge'], message, input: sit.edge })
    }),
    z.refine(({ mirror, count }) => mirror !== 'pairs' || count % 2 === 0, {
      path: ['count'],
      error: 'must be even, as “mirror” is “pairs”',
    }),
  )

/** Edge k of an outline runs from point k to the next, so there are as many as points. */
function edgeFault(edge: number, points: number): string | null {
  if (edge < points) return null
  return `must be at most ${points - 1}, for edge ${points - 1} is the outline’s last`
}

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
            message: `must differ from every other id, and entry ${taken} is “${shortText(id)}” too`,
            input: id,
          })
      })
    }),
  )
}

interface MotifFault {
  readonly path: (string | number)[]
  readonly message: string
  readonly input: string
}

/** Motifs of one id, and pieces that shall show one there is not. */
function motifFaults({ panels, pieces }: Shown): readonly MotifFault[] {
  const motifs = panels.flatMap((panel, p) =>
    (panel.motifs ?? []).map(({ id }, m) => ({ id, path: ['panels', p, 'motifs', m, 'id'] })),
  )
  const twins = motifs.flatMap(({ id, path }, k) => {
    const first = motifs.findIndex((other) => other.id === id)
    const message = 'must differ from the id of every other motif'
    return first < k ? [{ path, message, input: id }] : []
  })
  const unknown = pieces.flatMap(({ shows }, p) => {
    if (!shows || motifs.some(({ id }) => id === shows.motif)) return []
    const message = `must be the id of a motif of some panel, and there is ${listed(motifs.map(({ id }) => id))}`
    return [{ path: ['pieces', p, 'shows', 'motif'], message, input: shows.motif }]
  })
  return [...twins, ...unknown]
}

/** As much of a problem as showing motifs has to do with. */
interface Shown {
  readonly panels: readonly { readonly motifs?: readonly { readonly id: string }[] | undefined }[]
  readonly pieces: readonly { readonly shows?: { readonly motif: string } | undefined }[]
}

function listed(ids: readonly string[]): string {
  return ids.length === 0 ? 'none' : ids.map((id) => `“${shortText(id)}”`).join(', ')
}

/** The file format `cutworth-problem/1`, with its defaults. */
export const problemSchema = z
  .strictObject({
    format: z.literal(PROBLEM_FORMAT),
    name: z._default(z.string(), ''),
    clearance: z._default(notNegative, 0),
    seconds: z._default(z.number().check(z.positive()), 10),
    panels: listById(panelSchema),
    pieces: listById(pieceSchema),
  })
  .check(
    z.check((context) => {
      for (const { path, message, input } of motifFaults(context.value))
        context.issues.push({ code: 'custom', path, message, input })
    }),
  )

/** A problem file after reading: every default filled in. */
export type ProblemFile = z.infer<typeof problemSchema>

/** A problem file as it may be written: fields with defaults may be missing. */
export type ProblemFileInput = z.input<typeof problemSchema>
