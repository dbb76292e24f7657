import type { Result } from '../base/result.ts'
import { failed, ok } from '../base/result.ts'
import type { Stretch } from '../base/terms.ts'
import type { Mm, Percent } from '../base/units.ts'

/**
 * Stretch of cloth from two marks `relaxed` apart that reach `stretched` when pulled:
 * 100 (stretched − relaxed) / relaxed. 100 mm reaching 140 mm is 40 %. Faults: `relaxed`, `stretched`.
 */
export function stretchFromMarks(relaxed: Mm, stretched: Mm): Result<Percent> {
  if (!(relaxed > 0)) return failed([{ field: 'relaxed', message: 'must be more than 0' }])
  if (!(stretched >= relaxed) || stretched === Number.POSITIVE_INFINITY)
    return failed([{ field: 'stretched', message: `must be at least the relaxed length, ${relaxed}` }])
  return ok((100 * (stretched - relaxed)) / relaxed)
}

/**
 * Stretch that a garment girth needs to reach a body girth: 90 cm over 81 cm is 11.1 %, not 10 %; 0 when it is wide
 * enough unstretched. By the definition of stretch: (stretched − relaxed) / relaxed × 100.
 */
export function neededStretch(body: Mm, garment: Mm): Percent {
  return Math.max(0, (100 * (body - garment)) / garment)
}

/** Growth: how much longer the cloth stays after its rest, in per cent of the relaxed length. 100 mm resting at 102 mm is 2 %. */
export function growthPercent(relaxed: Mm, rested: Mm): Percent {
  return (100 * (rested - relaxed)) / relaxed
}

/**
 * Recovery of the stretch: which share of the extension went back, 100 (stretched − rested) / (stretched − relaxed).
 * 100 mm pulled to 140 and resting at 102 is 95 %. Not to be mixed with 100 − growth, the strip-test form.
 * Cloth that was not stretched has nothing to recover: 100.
 */
export function recoveryPercent(relaxed: Mm, stretched: Mm, rested: Mm): Percent {
  return stretched === relaxed ? 100 : (100 * (stretched - rested)) / (stretched - relaxed)
}

export type StretchBand = 'stable' | 'moderate' | 'stretchy' | 'super'

/**
 * The word home sewers use for a percentage: up to 25 stable, up to 50 moderate, up to 75 stretchy, above that
 * super (common practice; the limits vary from book to book, so the percentage is what is kept).
 * Throws RangeError below 0.
 */
export function stretchBand(percent: Percent): StretchBand {
  if (!(percent >= 0)) throw new RangeError(`A stretch cannot be ${percent} %.`)
  if (percent <= 25) return 'stable'
  if (percent <= 50) return 'moderate'
  return percent <= 75 ? 'stretchy' : 'super'
}

/** How a piece is held on the cloth: its own length with the grain, square to it, or neither. */
export type Hold = 'lengthwise' | 'crosswise' | 'askew'

/** True if cloth with stretch `has` gives a piece so held all it `needs` along the piece's own axes. */
export function stretchServes(has: Stretch | null, needs: Stretch, hold: Hold): boolean {
  const felt = has === null ? NONE : stretchFelt(has, hold)
  return felt.across >= needs.across && felt.along >= needs.along
}

const NONE: Stretch = { across: 0, along: 0 }

/**
 * What a piece feels along its own axes: crosswise the two figures change places; askew the smaller of the two is all
 * that can be relied on, both ways.
 */
function stretchFelt({ across, along }: Stretch, hold: Hold): Stretch {
  if (hold === 'lengthwise') return { across, along }
  if (hold === 'crosswise') return { across: along, along: across }
  const least = Math.min(across, along)
  return { across: least, along: least }
}
