import { MM_PER_INCH } from '../../core/base/units.ts'
import { type Garment, kindOf } from '../../core/garments/index.ts'
import type { Contents } from '../../core/records/index.ts'
import type { Cell } from '../../readers/csv/write-csv.ts'
import { stashWords } from '../words/en/stash.ts'
import { yours } from '../words/en/yours.ts'
import { type Units, unitName } from '../words/format.ts'
import { words } from '../words/words.ts'

const { columns } = yours

/**
 * The stash as a table, one garment a row under a row of titles. Lengths are decimal numbers in her unit, which their
 * titles name: a spreadsheet can reckon with 14.5, and not with 14 1/2. Measures that no garment has get no column.
 */
export function stashTable({ records }: Contents, units: Units): readonly (readonly Cell[])[] {
  const garments = records.garments.map(({ value }) => value)
  const measures = [...new Set(garments.flatMap(measuresOf))]
  const measureTitles = measures.map(
    (id) => `${words.garments.measures[id]?.name ?? id} (${unitName(units)})`,
  )
  const titles = [...Object.values(columns), ...measureTitles]
  const rows = garments.map((garment) => [
    ...facts(garment, promisedTo(garment.id, records)),
    ...measures.map((id) => inUnit(garment.measures[id], units)),
  ])
  return [titles, ...rows]
}

/** In the order of `columns`. */
function facts(garment: Garment, promised: string): readonly Cell[] {
  const { cloth } = garment
  return [
    garment.name,
    words.garments.kinds[garment.kind],
    garment.labelSize,
    garment.place,
    cloth.colour,
    cloth.fibres,
    cloth.structure === 'unknown' ? null : stashWords.made[cloth.structure],
    cloth.stretch?.across ?? null,
    cloth.stretch?.along ?? null,
    garment.gramsPerSquareMetre,
    garment.washed ? yours.yes : yours.no,
    garment.usedUp ? yours.yes : yours.no,
    garment.price,
    garment.boughtOn,
    promised,
    garment.note,
  ]
}

function promisedTo(garment: string, { reservations, projects }: Contents['records']): string {
  const ids = new Set(
    reservations.filter(({ value }) => value.garment === garment).map(({ value }) => value.project),
  )
  return projects
    .filter(({ id }) => ids.has(id))
    .map(({ value }) => value.name)
    .join('; ')
}

/** Measures that were typed, in the order in which the app asks for them. */
function measuresOf({ kind, measures }: Garment): readonly string[] {
  return kindOf(kind)
    .measures.map(({ id }) => id)
    .filter((id) => measures[id] !== undefined)
}

function inUnit(mm: number | undefined, { units }: Units): number | null {
  if (mm === undefined) return null
  return units === 'cm' ? mm / 10 : mm / MM_PER_INCH
}
