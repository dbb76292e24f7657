import { MM_PER_INCH, type Mm } from '../../base/units.ts'
import type { Garment } from '../../garments/garment.ts'
import type { Measures } from '../../garments/kind.ts'
import { kindOf } from '../../garments/kinds.ts'
import { emptyGarment } from '../../garments/starting.ts'
import { type MeasuredKind, TELLING_MEASURES } from '../../garments/telling.ts'
import type { BriefQuestion, TwoMeasures } from './brief.ts'
import { isPossible, usualMeasures } from './usual-garment.ts'

/** Garments from small to large, each no smaller in any measure than the one before: what a search climbs. */
export type Rungs = readonly Rung[]

export interface Rung extends TwoMeasures {
  readonly measures: Measures
}

/** What a tape in the hand tells apart. */
const STEP: Readonly<Record<BriefQuestion['units'], Mm>> = { cm: 5, in: MM_PER_INCH / 4 }

/** Cloth is bought by 5 cm or 2½ inches, and seldom more than this at once. */
const CLOTH_STEPS = 10
const MOST_CLOTH: Mm = 5000

/** Widths in which cloth is sold, the least of each range: 90, 110 to 115, 140 to 150 cm; 35, 44, 58 inches. Common practice. */
export const CLOTH_WIDTHS: Readonly<Record<BriefQuestion['units'], readonly Mm[]>> = {
  cm: [900, 1100, 1400],
  in: [35 * MM_PER_INCH, 44 * MM_PER_INCH, 58 * MM_PER_INCH],
}

type Asked = Pick<BriefQuestion, 'kind' | 'units'>

/** Garments of usual proportions, as wide as a tape can tell apart. `length` replaces the usual one. */
export function byWidth({ kind, units }: Asked, length?: Mm): Rungs {
  const step = STEP[units]
  const { least, most } = range(kind, 'width')
  return steps(least, most, step).flatMap((width) => {
    const usual = usualMeasures(kind, width)
    const along = length ?? upTo(usual[TELLING_MEASURES[kind].length] as Mm, step, range(kind, 'length').most)
    return rung(kind, usual, width, along)
  })
}

/** The same garment in every length up to `most`. */
export function byLength({ kind, units }: Asked, { measures, width }: Omit<Rung, 'length'>, most: Mm): Rungs {
  const step = STEP[units] * (kind === 'cloth' ? CLOTH_STEPS : 1)
  return steps(range(kind, 'length').least, most, step).flatMap((length) =>
    rung(kind, measures, width, length),
  )
}

/** Cloth of one width, in every length that is bought. */
export function clothRungs(asked: Asked, width: Mm): Rungs {
  return byLength(asked, { measures: usualMeasures('cloth', width), width }, MOST_CLOTH)
}

/** A garment of the rung's measures, of which nothing else is known but how it is usually made. */
export function garmentOf(
  kind: MeasuredKind,
  { measures }: Pick<Rung, 'measures'>,
  cloth: Partial<Garment['cloth']>,
): Garment {
  const garment = emptyGarment(kind, 'looked-for')
  return { ...garment, measures, cloth: { ...garment.cloth, ...cloth } }
}

export function longest(kind: MeasuredKind): Mm {
  return range(kind, 'length').most
}

/** As the kind's plausible range has it. */
function range(kind: MeasuredKind, which: 'width' | 'length') {
  const id = TELLING_MEASURES[kind][which]
  return kindOf(kind).measures.find((spec) => spec.id === id) as { least: Mm; most: Mm }
}

function rung(kind: MeasuredKind, usual: Measures, width: Mm, length: Mm): Rungs {
  const telling = TELLING_MEASURES[kind]
  const measures = { ...usual, [telling.width]: width, [telling.length]: length }
  return isPossible(kind, measures) ? [{ width, length, measures }] : []
}

/** Whole steps within a range. */
function steps(least: Mm, most: Mm, step: Mm): readonly Mm[] {
  const first = Math.ceil(least / step)
  const count = Math.floor(most / step) - first + 1
  return Array.from({ length: Math.max(0, count) }, (_, k) => (first + k) * step)
}

function upTo(length: Mm, step: Mm, most: Mm): Mm {
  return Math.min(Math.floor(most / step), Math.ceil(length / step)) * step
}
