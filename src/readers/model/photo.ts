import * as z from 'zod/mini'
import type { Result } from '../../core/base/result.ts'
import type { Photo } from '../../core/stash/photo.ts'
import { readBySchema } from '../faults.ts'
import { id, time } from './fields.ts'

const pixels = z.int().check(z.gte(1), z.lte(20_000))

/** What the JSON of a photo's facts looks like. */
export const photoSchema = z.strictObject({ id, width: pixels, height: pixels, takenAt: time })

/** A photo's facts from stored JSON, or what is wrong with them. */
export function readPhoto(json: unknown): Result<Photo> {
  return readBySchema(photoSchema, json)
}
