import * as z from 'zod/mini'
import { ok, type Result } from '../../core/base/result.ts'
import { CLOTH_MAKES } from '../../core/base/terms.ts'
import { FLAW_KINDS } from '../../core/garments/garment.ts'
import { KIND_IDS, LABEL_SIZES } from '../../core/garments/kind.ts'
import { MOTIF_PLACES } from '../../core/planning/motif-places.ts'
import { type CheckDraft, EMPTY_DRAFT, STEPS } from './check-draft.ts'

const point = z.tuple([z.number(), z.number()])
const percent = () => z.catch(z.nullable(z.number().check(z.minimum(0), z.maximum(400))), null)

const box = z.object({ form: z.literal('box'), from: point, to: point })

const flaw = z.object({
  id: z.string(),
  panel: z.string(),
  kind: z.enum(FLAW_KINDS),
  shape: z.discriminatedUnion('form', [
    z.object({ form: z.literal('round'), centre: point, radius: z.number() }),
    box,
    z.object({ form: z.literal('line'), points: z.array(point), width: z.number() }),
  ]),
})

const print = z.object({
  panel: z.string(),
  frame: box,
  piece: z.string(),
  place: z.enum(MOTIF_PLACES),
  // Drafts from before it could be told.
  anyWayUp: z._default(z.boolean(), false),
  within: z.number().check(z.nonnegative()),
})

const { cloth, stretch } = EMPTY_DRAFT

/** Each field stands by itself: one that an older version of the app wrote otherwise starts anew, the others stay. */
const gate = z.object({
  pattern: z.catch(z.nullable(z.string()), null),
  version: z.catch(z.string(), ''),
  size: z.catch(z.string(), ''),
  kind: z.catch(z.nullable(z.enum(KIND_IDS)), null),
  labelSize: z.catch(z.nullable(z.enum(LABEL_SIZES)), null),
  measures: z.catch(z.record(z.string(), z.number().check(z.positive())), {}),
  unread: z.catch(z.record(z.string(), z.string()), {}),
  traits: z.catch(z.record(z.string(), z.boolean()), {}),
  opening: z.catch(z.enum(['cut', 'unpicked']), EMPTY_DRAFT.opening),
  outline: z.catch(z.nullable(z.array(point)), null),
  stretch: z.catch(z.object({ across: percent(), along: percent() }), stretch),
  cloth: z.catch(
    z.object({
      structure: z.catch(z.enum([...CLOTH_MAKES, 'unknown']), cloth.structure),
      surface: z.catch(z.enum(['plain', 'one-way']), cloth.surface),
      pile: z.catch(z.enum(['down', 'up']), cloth.pile),
      faces: z.catch(z.literal([1, 2]), cloth.faces),
      fibres: z.catch(z.string(), ''),
      colour: z.catch(z.string(), ''),
    }),
    cloth,
  ),
  otherRoles: z.catch(z.array(z.string()), []),
  flaws: z.catch(z.array(flaw), []),
  ownHem: z.catch(z.array(z.string()), []),
  print: z.catch(z.nullable(print), null),
  garment: z.catch(z.nullable(z.string()), null),
  step: z.catch(z.nullable(z.enum(STEPS)), null),
})

/** Reads back a stored draft. Never refuses: what cannot be read of it starts anew. */
export function draftGate(raw: unknown): Result<CheckDraft> {
  const read = gate.safeParse(raw)
  return ok(read.success ? read.data : EMPTY_DRAFT)
}
