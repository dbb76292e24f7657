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
export function conflictWords({ taken, ...ref }: Conflict, here: Contents, there: Contents): string {
  const said = holds(taken === 'here' ? here : there, ref) ? yours.taken : yours.takenRemoved
  return `${recordWords(ref, [there, here])}: ${said[taken]}`
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
