import * as z from 'zod/mini'
import type { Result } from '../../core/base/result.ts'
import type { Lay } from '../../core/planning/lay.ts'
import { readBySchema } from '../faults.ts'
import { parseJson } from './read-problem.ts'

/** The only value of `format` that this reader knows. */
export const LAY_FORMAT = 'cutworth-lay/1'

const text = z.string().check(z.minLength(1))
const notNegative = z.number().check(z.gte(0))

/** The file format `cutworth-lay/1`. `spareIs` came later: a file without it is read as one whose search was cut short. */
export const laySchema = z.strictObject({
  format: z.literal(LAY_FORMAT),
  verdict: z.enum(['fits', 'cannot', 'not-found']),
  placements: z.array(
    z.strictObject({
      piece: text,
      copy: z.int().check(z.gte(1)),
      panel: text,
      turn: z.number(),
      mirrored: z.boolean(),
      x: z.number(),
      y: z.number(),
    }),
  ),
  reason: z.nullable(
    z.strictObject({ kind: text, text, pieces: z.array(text), figures: z.record(z.string(), z.number()) }),
  ),
  leftOut: z.array(text),
  spare: z.nullable(notNegative),
  spareIs: z.optional(z.nullable(z.enum(['found', 'at-least']))),
  elapsedMs: notNegative,
})

export type LayFile = z.infer<typeof laySchema>

/** A lay as a lay file. */
export function writeLayFile(lay: Lay): LayFile {
  const { verdict, placements, reason, leftOut, spare, spareIs, elapsedMs } = lay
  return {
    format: LAY_FORMAT,
    verdict,
    placements: [...placements],
    reason: reason && { ...reason, pieces: [...reason.pieces], figures: { ...reason.figures } },
    leftOut: [...leftOut],
    spare,
    spareIs,
    elapsedMs: Math.round(elapsedMs),
  }
}

/** A lay file, as its text or as what JSON.parse made of it. Whether the lay is true is for a checker to say. */
export function readLay(source: unknown): Result<Lay> {
  const json = typeof source === 'string' ? parseJson(source) : { ok: true as const, value: source }
  if (!json.ok) return json
  const file = readBySchema(laySchema, json.value)
  if (!file.ok) return file
  const { format: _, spare, spareIs, ...lay } = file.value
  return { ok: true, value: { ...lay, ...spareRead(lay.verdict, spare, spareIs ?? null) } }
}

/** A lay that fits says how its spare is known. One that does not say so was found at least; 0 at least is nothing known. */
function spareRead(
  verdict: Lay['verdict'],
  spare: Lay['spare'],
  spareIs: Lay['spareIs'],
): Pick<Lay, 'spare' | 'spareIs'> {
  if (verdict !== 'fits') return { spare: null, spareIs: null }
  if (spareIs === 'found' && spare !== null) return { spare, spareIs }
  return { spare: spare === 0 ? null : spare, spareIs: 'at-least' }
}
