import * as z from 'zod/mini'
import { failed, type Result } from '../../core/base/result.ts'
import { CLOTH_MAKES } from '../../core/base/terms.ts'
import { outlineFaults } from '../../core/garments/faults.ts'
import { FLAW_KINDS, type Garment } from '../../core/garments/garment.ts'
import { KIND_IDS, LABEL_SIZES } from '../../core/garments/kind.ts'
import { readBySchema } from '../faults.ts'
import { id, MOST_POINTS, money, name, point, polygon, prose, size, stretch, surface } from './fields.ts'

const flawShape = z.discriminatedUnion('form', [
  z.strictObject({ form: z.literal('round'), centre: point, radius: size }),
  z.strictObject({ form: z.literal('box'), from: point, to: point }),
  z.strictObject({
    form: z.literal('line'),
    points: z.array(point).check(z.minLength(2), z.maxLength(MOST_POINTS)),
    width: size,
  }),
])

const cloth = z.strictObject({
  stretch: z.union([z.null(), stretch]),
  structure: z.enum([...CLOTH_MAKES, 'unknown']),
  surface,
  pile: z.enum(['down', 'up']),
  faces: z.literal([1, 2]),
  fibres: name,
  colour: name,
})

/** What a garment's JSON looks like; `readGarment` also asks whether it makes sense. */
export const garmentSchema = z.strictObject({
  id,
  name,
  kind: z.enum(KIND_IDS),
  labelSize: z.union([z.null(), z.enum(LABEL_SIZES)]),
  measures: z.record(id, size),
  traits: z.record(id, z.boolean()),
  opening: z.enum(['cut', 'unpicked']),
  outline: z.union([z.null(), polygon]),
  cloth,
  role: z.union([z.null(), id]),
  flaws: z
    .array(z.strictObject({ id, panel: id, kind: z.enum(FLAW_KINDS), shape: flawShape }))
    .check(z.maxLength(500)),
  price: z.union([z.null(), money]),
  washed: z.boolean(),
  note: prose,
  // Not written by older versions of the app.
  gramsPerSquareMetre: z._default(z.union([z.null(), z.number().check(z.positive(), z.lte(5_000))]), null),
  place: z._default(name, ''),
  // Those of two devices come together.
  photos: z._default(z.array(id).check(z.maxLength(500)), []),
  boughtOn: z._default(z.union([z.null(), z.iso.date()]), null),
  usedUp: z._default(z.boolean(), false),
})

/**
 * A garment from stored, shared or shipped JSON, or what is wrong with it. Measures that are missing or unlikely are
 * let through, for a garment half measured in the shop must not be lost; measureFaults asks about them.
 */
export function readGarment(json: unknown): Result<Garment> {
  const result: Result<Garment> = readBySchema(garmentSchema, json)
  if (!result.ok || result.value.outline === null) return result
  const faults = outlineFaults(result.value.outline)
  return faults.length > 0 ? failed(faults) : result
}
