import * as z from 'zod/mini'
import { RECORD_STORES } from '../../core/records/record.ts'
import { cutSchema, offcutSchema } from '../model/cut.ts'
import { id } from '../model/fields.ts'
import { garmentSchema } from '../model/garment.ts'
import { notionSchema } from '../model/notion.ts'
import { patternSchema } from '../model/pattern.ts'
import { photoSchema } from '../model/photo.ts'
import { projectSchema } from '../model/project.ts'
import { reservationSchema } from '../model/reservation.ts'
import { FORMAT, FORMAT_VERSION } from './backup.ts'

/** ms since 1970, up to the year 10000. */
const time = z.number().check(z.nonnegative(), z.lte(253_402_300_799_999))
const store = z.enum(RECORD_STORES)
const anything = z.unknown()

const MOST_RECORDS = 200_000

function recordOf<Value extends z.ZodMiniType>(value: Value) {
  return z.strictObject({
    id,
    value,
    keptAt: time,
    changedAt: time,
    // Since version 2.
    unitsChangedAt: z.optional(z.record(z.string(), time)),
  })
}

/** What one record of each store looks like. */
export const recordSchemas = {
  garments: recordOf(garmentSchema),
  patterns: recordOf(patternSchema),
  projects: recordOf(projectSchema),
  reservations: recordOf(reservationSchema),
  cuts: recordOf(cutSchema),
  offcuts: recordOf(offcutSchema),
  notions: recordOf(notionSchema),
  photos: recordOf(photoSchema),
}

function shelf<Value extends z.ZodMiniType>(value: Value) {
  return z.array(value).check(z.maxLength(MOST_RECORDS))
}

const frame = {
  format: z.literal(FORMAT),
  version: z.literal([1, FORMAT_VERSION]),
  device: id,
  madeAt: time,
  removed: z.array(z.strictObject({ store, id, removedAt: time })).check(z.maxLength(MOST_RECORDS)),
  unread: z.array(z.strictObject({ store, id, record: anything })).check(z.maxLength(MOST_RECORDS)),
  common: z
    .array(z.strictObject({ device: id, at: time, stamps: z.record(z.string(), z.number()) }))
    .check(z.maxLength(100)),
  settings: z.optional(anything),
  drafts: z.record(z.string(), anything),
}

/** Everything but the records themselves, which are read one by one: a file that is all wrong is not told fault by fault. */
export const frameSchema = z.strictObject({
  ...frame,
  records: z.strictObject({
    garments: shelf(anything),
    patterns: shelf(anything),
    projects: shelf(anything),
    reservations: shelf(anything),
    cuts: shelf(anything),
    offcuts: shelf(anything),
    notions: shelf(anything),
    photos: shelf(anything),
  }),
})

/** What backup.json looks like. backup.schema.json is written from it. */
export const backupSchema = z.strictObject({
  ...frame,
  records: z.strictObject({
    garments: shelf(recordSchemas.garments),
    patterns: shelf(recordSchemas.patterns),
    projects: shelf(recordSchemas.projects),
    reservations: shelf(recordSchemas.reservations),
    cuts: shelf(recordSchemas.cuts),
    offcuts: shelf(recordSchemas.offcuts),
    notions: shelf(recordSchemas.notions),
    photos: shelf(recordSchemas.photos),
  }),
})
