import * as z from 'zod/mini'
import type { Result } from '../../core/base/result.ts'
import type { Reservation } from '../../core/stash/reservation.ts'
import { readBySchema } from '../faults.ts'
import { coordinate, id, length, polygon, simple } from './fields.ts'

/** A copy where it lies. */
export const laidPiece = z.strictObject({
  piece: id,
  copy: z.int().check(z.gte(1), z.lte(10_000)),
  panel: id,
  turn: z.number().check(z.gte(-360), z.lte(360)),
  mirrored: z.boolean(),
  x: coordinate,
  y: coordinate,
  outline: polygon.check(simple),
})

/** What a reservation's JSON looks like. */
export const reservationSchema = z.strictObject({
  id,
  project: id,
  garment: id,
  pieces: z.array(laidPiece).check(z.maxLength(1_000)),
  clearance: length,
  spare: z.union([z.null(), length]),
})

/** A reservation from stored JSON, or what is wrong with it. Whether its places are free is for the stash to say. */
export function readReservation(json: unknown): Result<Reservation> {
  return readBySchema(reservationSchema, json)
}
