import * as z from 'zod/mini'
import { type Fault, failed, type Result } from '../../core/base/result.ts'
import type { Project } from '../../core/stash/project.ts'
import { readBySchema } from '../faults.ts'
import { id, length, money, name, prose } from './fields.ts'
import { patternSchema } from './pattern.ts'

const role = z.string().check(z.maxLength(200))

/** What a project's JSON looks like; `readProject` also asks whether its pattern can be made. */
export const projectSchema = z.strictObject({
  id,
  name,
  pattern: patternSchema,
  version: id,
  size: name,
  clearance: length,
  colours: z.record(role, name),
  blocked: z.array(role).check(z.maxLength(100)),
  newCloth: z.union([
    z.null(),
    z.strictObject({ pricePerMetre: z.union([z.null(), money]), width: length.check(z.positive()) }),
  ]),
  taken: z
    .array(
      z.strictObject({ need: id, notion: id, amount: z.number().check(z.nonnegative(), z.lte(10_000_000)) }),
    )
    .check(z.maxLength(1_000)),
  finished: z.boolean(),
  note: prose,
})

/** A project from stored JSON, or what is wrong with it: fields first, then a version or size that its pattern has not. */
export function readProject(json: unknown): Result<Project> {
  const result: Result<Project> = readBySchema(projectSchema, json)
  if (!result.ok) return result
  const { pattern, version, size } = result.value
  const faults: Fault[] = []
  if (pattern.versions.every((one) => one.id !== version))
    faults.push({ field: 'version', message: 'must be the id of one of the pattern’s versions' })
  if (!pattern.sizes.includes(size))
    faults.push({ field: 'size', message: 'must be one of the pattern’s sizes' })
  return faults.length > 0 ? failed(faults) : result
}
