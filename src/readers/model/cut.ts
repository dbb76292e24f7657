import * as z from 'zod/mini'
import type { Result } from '../../core/base/result.ts'
import type { Cut, Offcut } from '../../core/stash/cut.ts'
import { readBySchema } from '../faults.ts'
import { id, polygon, time } from './fields.ts'
import { laidPiece } from './reservation.ts'

const flaws = z.array(polygon).check(z.maxLength(1_000))

/** What a cut's JSON looks like. */
export const cutSchema = z.strictObject({
  id,
  project: id,
  garment: id,
  panel: id,
  outline: polygon,
  flaws,
  pieces: z.array(laidPiece).check(z.maxLength(1_000)),
  reservation: id,
  offcuts: z.array(id).check(z.maxLength(1_000)),
  at: time,
})

/** What an offcut's JSON looks like. */
export const offcutSchema = z.strictObject({
  id,
  garment: id,
  cut: id,
  outline: polygon,
  flaws,
  kept: z.boolean(),
})

/** A cut from stored JSON, or what is wrong with it. */
export function readCut(json: unknown): Result<Cut> {
  return readBySchema(cutSchema, json)
}

/** An offcut from stored JSON, or what is wrong with it. */
export function readOffcut(json: unknown): Result<Offcut> {
  return readBySchema(offcutSchema, json)
}
