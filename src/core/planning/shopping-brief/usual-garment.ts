import type { Mm } from '../../base/units.ts'
import { isQuestion, measureFaults } from '../../garments/faults.ts'
import { type GarmentKind, LABEL_SIZES, type Measures } from '../../garments/kind.ts'
import { kindOf } from '../../garments/kinds.ts'
import { usualTraits } from '../../garments/starting.ts'
import { type MeasuredKind, TELLING_MEASURES } from '../../garments/telling.ts'

/**
 * The measures of a garment of usual proportions that is so wide: between the two label sizes that come nearest, each
 * measure in the same share. Narrower than the smallest, all shrink alike; wider than the largest, length grows alike and
 * the other measures stay as the largest has them, since no more can be relied on. No measure shrinks as the width
 * grows: where the tables say so, the smaller figure counts.
 */
export function usualMeasures(kindId: MeasuredKind, width: Mm): Measures {
  const kind = kindOf(kindId)
  const { width: across, length: along } = TELLING_MEASURES[kindId]
  const columns = new Map(kind.measures.map(({ id }) => [id, growing(kind, id)]))
  const widths = columns.get(across) as readonly Mm[]
  const measures = kind.measures.map(({ id, most }) => {
    const column = columns.get(id) as readonly Mm[]
    return [id, id === across ? width : Math.min(most, at(width, widths, column, id === along))] as const
  })
  return Object.fromEntries(measures)
}

/** True if there can be a garment of these measures, made as is usual. */
export function isPossible(kindId: MeasuredKind, measures: Measures): boolean {
  const kind = kindOf(kindId)
  return measureFaults(kind, measures, usualTraits(kind)).every(isQuestion)
}

/** What a measure is by the label sizes, never more than a larger size has. */
function growing(kind: GarmentKind, id: string): readonly Mm[] {
  const { start } = kind.measures.find((spec) => spec.id === id) as GarmentKind['measures'][number]
  const values = LABEL_SIZES.map((size) => start[size])
  return values.map((_, k) => Math.min(...values.slice(k)))
}

function at(width: Mm, widths: readonly Mm[], column: readonly Mm[], isLength: boolean): Mm {
  const last = widths.length - 1
  const next = widths.findIndex((each) => each >= width)
  const [from, to] = [next - 1, next].map((k) => [widths[k] ?? 0, column[k] ?? 0] as const) as [
    readonly [Mm, Mm],
    readonly [Mm, Mm],
  ]
  if (next < 0) return (column[last] as Mm) * (isLength ? width / (widths[last] as Mm) : 1)
  return from[1] + ((to[1] - from[1]) * (width - from[0])) / (to[0] - from[0])
}
