import * as z from 'zod/mini'
import type { Result } from '../../core/base/result.ts'
import { NOTION_KINDS, type Notion } from '../../core/notions/notion.ts'
import { readBySchema } from '../faults.ts'
import { id, LONGEST, length, name, prose } from './fields.ts'

/** What a notion's JSON looks like. */
export const notionSchema = z.strictObject({
  id,
  kind: z.enum(NOTION_KINDS),
  name,
  width: z.union([z.null(), length]),
  colour: name,
  lengths: z.array(z.number().check(z.positive(), z.lte(LONGEST))).check(z.maxLength(500)),
  count: z.number().check(z.nonnegative(), z.lte(1_000_000), z.multipleOf(1)),
  price: z.union([z.null(), z.number().check(z.nonnegative(), z.lte(1_000_000))]),
  place: name,
  note: prose,
})

/** A notion from stored, shared or shipped JSON, or what is wrong with it. */
export function readNotion(json: unknown): Result<Notion> {
  return readBySchema(notionSchema, json)
}
