import * as z from 'zod/mini'
import { failed, ok, type Result } from '../../core/base/result.ts'
import { LABEL_SIZES, MEASURED_KINDS } from '../../core/garments/index.ts'
import type { LookForList } from './look-for-list.ts'

const amount = () => z.number().check(z.nonnegative())
const pairs = z.array(z.object({ width: amount(), length: amount() }))

const figures = z.object({
  kind: z.enum(MEASURED_KINDS),
  stretch: z.object({ across: amount(), along: amount() }),
  enough: pairs,
  tooSmall: pairs,
  none: z.boolean(),
  oneWay: z.boolean(),
  label: z.nullable(z.enum(LABEL_SIZES)),
})

const thing = z.object({
  id: z.string(),
  pattern: z.string(),
  version: z.string(),
  size: z.string(),
  role: z.nullable(z.string()),
  title: z.string(),
  detail: z.string(),
  given: z.string(),
  // Figures that an older version wrote otherwise are worked out again.
  figures: z.catch(z.array(figures), []),
})

const gate = z.object({ things: z.array(thing), kinds: z.array(z.enum(MEASURED_KINDS)) })

/** What to look for as it was stored, perhaps by an older version of the app. */
export function lookForGate(stored: unknown): Result<LookForList> {
  const read = gate.safeParse(stored)
  if (read.success) return ok(read.data as LookForList)
  return failed(read.error.issues.map(({ path, message }) => ({ field: path.join('.'), message })))
}
