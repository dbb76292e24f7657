import * as z from 'zod/mini'
import type { Result } from '../../core/base/result.ts'
import type { Cut, Offcut } from '../../core/stash/cut.ts'
import { readBySchema } from '../faults.ts'
import { id, point, simple, time } from './fields.ts'
import { laidPiece } from './reservation.ts'

/** What many pieces leave has all their corners. */
const remainder = z.array(point).check(z.minLength(3), z.maxLength(100_000))

/** Pieces are laid in it, or were. */
const cloth = remainder.check(simple)

/** A stroke drawn over a flaw is a disc for each of its points. */
const flaws = z.array(remainder).check(z.maxLength(100_000))

/** What a cut's JSON looks like. */
export const cutSchema = z.strictObject({
  id,
  project: id,
  garment: id,
  panel: id,
  outline: cloth,
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
  outline: cloth,
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
