import * as z from 'zod/mini'
import type { Result } from '../../core/base/result.ts'
import { NOTION_KINDS, type Notion } from '../../core/notions/notion.ts'
import { readBySchema } from '../faults.ts'
import { count, id, length, money, name, prose } from './fields.ts'

/** What a notion's JSON looks like. */
export const notionSchema = z.strictObject({
  id,
  kind: z.enum(NOTION_KINDS),
  name,
  width: z.union([z.null(), length]),
  colour: name,
  // Ribbon and thread come on reels: longer than any cloth.
  lengths: z.array(z.number().check(z.nonnegative(), z.lte(10_000_000))).check(z.maxLength(1_000)),
  count,
  price: z.union([z.null(), money]),
  place: name,
  note: prose,
})

/** A notion from stored JSON, or what is wrong with it. */
export function readNotion(json: unknown): Result<Notion> {
  return readBySchema(notionSchema, json)
}
