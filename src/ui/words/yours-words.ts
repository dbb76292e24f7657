import {
  type Conflict,
  type Contents,
  type Difference,
  RECORD_STORES,
  type RecordRef,
  type Settlement,
} from '../../core/records/index.ts'
import { yours } from './en/yours.ts'
import { writeList } from './format.ts'
import { roleName } from './project-words.ts'
import { words } from './words.ts'

/** “12 garments, 3 projects and one photo”; empty when there is nothing. */
export function contentsWords({ records, unread }: Contents): string {
  const counts = RECORD_STORES.flatMap((name) => {
    const count = records[name].length + unread.filter(({ store }) => store === name).length
    return count === 0 ? [] : [yours.counts[name](count)]
  })
  return writeList(counts)
}

/** A record with its kind, by the names in whichever of these has it: `Garment “Striped T-shirt”`. */
export function recordWords(ref: RecordRef, from: readonly Contents[]): string {
  return yours.named(yours.kinds[ref.store], nameOf(ref, from))
}

function nameOf({ store, id }: RecordRef, from: readonly Contents[]): string {
  const value = lastValue(store, id, from)
  if (!value) return id
  const named = (other: RecordRef) => nameOf(other, from)
  if ('project' in value) {
    const project = named({ store: 'projects', id: value.project })
    return yours.forOn(project, named({ store: 'garments', id: value.garment }))
  }
  if ('garment' in value) return yours.offcutOf(named({ store: 'garments', id: value.garment }))
  if ('name' in value && value.name.trim()) return value.name
  if ('measures' in value) return words.garments.kinds[value.kind]
  return 'takenAt' in value ? id.slice(0, 6) : yours.noName
}

function lastValue(store: RecordRef['store'], id: string, from: readonly Contents[]) {
  for (const { records } of from) {
    const found = [...records[store]].find((record) => record.id === id)
    if (found) return found.value
  }
  return null
}

/** Which of two changes of one record is taken, in words. */
export function conflictWords({ taken, units, ...ref }: Conflict, here: Contents, there: Contents): string {
  const record = recordWords(ref, [there, here])
  if (units.length > 0) return `${record}: ${unitsTaken(units)}`
  const said = holds(taken === 'here' ? here : there, ref) ? yours.taken : yours.takenRemoved
  return `${record}: ${said[taken]}`
}

/** “name and place as it is here; colour as it is in the file”. */
function unitsTaken(units: Conflict['units']): string {
  const sides = (['here', 'there'] as const).flatMap((side) => {
    const names = units.filter(({ taken }) => taken === side).map(({ unit }) => unitWords(unit))
    return names.length === 0 ? [] : [`${writeList([...new Set(names)])} ${yours.taken[side]}`]
  })
  return sides.join('; ')
}

/** A part of a record by its name, as core/records/units.ts has it. */
export function unitWords(unit: string): string {
  const whole = yours.units[unit]
  if (whole !== undefined) return whole
  const [field = '', name = ''] = unit.split(/\.(.*)/, 2)
  const part = yours.units[field] ?? field
  if (field === 'measures') return yours.ofUnit(part, words.garments.measures[name]?.name ?? name)
  return field === 'colours' ? yours.ofUnit(part, roleName(name)) : part
}

function holds({ records, unread }: Contents, { store, id }: RecordRef): boolean {
  return [...records[store], ...unread.filter((each) => each.store === store)].some((each) => each.id === id)
}

/** What merging does in words, by what becomes of the records. */
export function differenceWords(
  differences: readonly Difference[],
  what: Difference['what'],
  from: readonly Contents[],
): readonly string[] {
  return differences.filter((each) => each.what === what).map((each) => recordWords(each, from))
}

export function settlementWords(settlement: Settlement, from: readonly Contents[]): string {
  const record = recordWords(settlement, from)
  const by = 'by' in settlement ? recordWords(settlement.by, from) : ''
  switch (settlement.what) {
    case 'kept-for':
      return yours.keptFor(record, by)
    case 'orphan-gone':
      return yours.orphan(record)
    case 'cut-twice':
      return yours.cutTwice(record, by)
    case 'copies-taken-off':
      return yours.copiesOff(record, settlement.copies)
    case 'moved':
      return yours.moved(record)
    case 'released':
      return {
        'place-taken': yours.placeTaken(record, by),
        'laid-twice': yours.laidTwice(record, by),
        'no-cloth': yours.noCloth(record),
      }[settlement.why]
  }
}
