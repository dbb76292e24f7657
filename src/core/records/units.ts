import { canonical } from './canonical.ts'
import type { Kept, RecordStore } from './record.ts'

/**
 * A unit is what of a record is merged by itself: one field, a field inside another (`cloth.colour`), or several that
 * only make sense together. Units of one record may come from two devices.
 */

interface Division {
  /** Units of several fields, by name: none of them is worth anything without the others. */
  readonly together: Readonly<Record<string, readonly string[]>>
  /** Fields that are objects of fields or lists of things with ids: each of those is a unit by itself. */
  readonly inside: readonly string[]
  /** Lists of ids that only grow when two devices have added to them. */
  readonly united: readonly string[]
}

const PLAIN: Division = { together: {}, inside: [], united: [] }

/**
 * By store; a store that is not named here is merged record by record: reservations, cuts and offcuts say where
 * things lie, and half of one and half of another would say nothing true.
 */
const DIVISIONS: { readonly [Name in RecordStore]?: Division } = {
  garments: {
    together: { kind: ['kind', 'labelSize', 'traits', 'opening', 'outline'] },
    inside: ['cloth', 'measures', 'flaws'],
    united: ['photos'],
  },
  patterns: {
    ...PLAIN,
    together: {
      pieces: ['sizes', 'versions', 'pieces', 'notions'],
      rules: ['clearance', 'leastAllowance', 'leastHem', 'mostTilt'],
    },
  },
  projects: {
    ...PLAIN,
    together: { pattern: ['pattern', 'version', 'size', 'clearance'] },
    inside: ['colours'],
  },
  notions: { ...PLAIN, together: { lengths: ['kind', 'lengths', 'count'] } },
}

type Fields = Readonly<Record<string, unknown>>

/** False: the record is merged as one. */
export function hasUnits(store: RecordStore): boolean {
  return DIVISIONS[store] !== undefined
}

/** What a record says, unit by unit. A field that is absent has no unit. */
export function unitsOf(store: RecordStore, value: unknown): Map<string, Fields> {
  const { together, inside } = DIVISIONS[store] ?? PLAIN
  const units = new Map<string, Fields>()
  // A stored record that cannot be read may be anything.
  for (const [field, part] of Object.entries((value ?? {}) as Fields)) {
    if (field === 'id' || part === undefined) continue
    const group = Object.keys(together).find((name) => together[name]?.includes(field))
    if (group !== undefined) units.set(group, { ...units.get(group), [field]: part })
    else if (inside.includes(field) && part !== null && typeof part === 'object')
      for (const [name, inner] of innerOf(part)) units.set(`${field}.${name}`, { [name]: inner })
    else units.set(field, { [field]: part })
  }
  return units
}

/** A foreign file may have two things of one id: none of them is lost. */
function innerOf(part: object): readonly (readonly [string, unknown])[] {
  if (!Array.isArray(part)) return Object.entries(part)
  const ids = (part as readonly ({ readonly id?: unknown } | null)[]).map((each) => String(each?.id))
  return part.map((each, k) => {
    const before = ids.slice(0, k).filter((id) => id === ids[k]).length
    return [before === 0 ? (ids[k] as string) : `${ids[k]}#${before + 1}`, each]
  })
}

/** The reverse of unitsOf; things in a list come in the order of their ids. `lists`: the fields that are lists. */
export function fromUnits<T>(
  store: RecordStore,
  id: string,
  units: ReadonlyMap<string, Fields>,
  lists: ReadonlySet<string>,
): T {
  const { inside } = DIVISIONS[store] ?? PLAIN
  const inner = new Map(inside.map((field) => [field, [] as (readonly [string, unknown])[]]))
  const value: Record<string, unknown> = { id }
  for (const [unit, fields] of units) {
    const field = inside.find((name) => unit.startsWith(`${name}.`))
    if (field === undefined) Object.assign(value, fields)
    else inner.get(field)?.push(...Object.entries(fields))
  }
  for (const [field, parts] of inner)
    value[field] = lists.has(field) ? parts.map(([, part]) => part) : Object.fromEntries(parts)
  return value as T
}

/** The fields of a record that are lists. */
export function listsOf(value: unknown): ReadonlySet<string> {
  return new Set(
    Object.entries(value as Fields).flatMap(([field, part]) => (Array.isArray(part) ? [field] : [])),
  )
}

export function isUnited(store: RecordStore, unit: string): boolean {
  return DIVISIONS[store]?.united.includes(unit) ?? false
}

/**
 * When a unit was changed last. What is there and has no time of its own goes by the record's, as all of a record does
 * that was written before there were such times; what is not there and has none never was.
 */
export function unitStamp(
  { changedAt, unitsChangedAt }: Kept<unknown>,
  unit: string,
  isThere: boolean,
): number {
  return unitsChangedAt?.[unit] ?? (isThere ? changedAt : 0)
}

/** A record with a new value, changed at a time: the units that say the same as before keep their times. */
export function changedRecord<T extends { readonly id: string }>(
  store: RecordStore,
  before: Kept<T> | null,
  value: T,
  at: number,
): Kept<T> {
  const record = { id: value.id, value, keptAt: before?.keptAt ?? at, changedAt: at }
  if (!before || !Number.isFinite(before.changedAt) || !hasUnits(store)) return record
  const [was, is] = [unitsOf(store, before.value), unitsOf(store, value)]
  const stamps = new Map<string, number>()
  for (const unit of new Set([...was.keys(), ...is.keys()])) {
    const stays = canonical(was.get(unit)) === canonical(is.get(unit))
    stamps.set(unit, stays ? unitStamp(before, unit, was.has(unit)) : at)
  }
  return stamped(record, is, stamps)
}

/** The record with the time of its last change moved, and those of its units left as they are. */
export function movedRecord<T>(store: RecordStore, record: Kept<T>, at: number): Kept<T> {
  const { unitsChangedAt: _, ...moved } = { ...record, changedAt: at }
  if (!hasUnits(store)) return moved
  const units = unitsOf(store, record.value)
  const names = new Set([...units.keys(), ...Object.keys(record.unitsChangedAt ?? {})])
  return stamped(
    moved,
    units,
    new Map([...names].map((unit) => [unit, unitStamp(record, unit, units.has(unit))])),
  )
}

/** Writes down the times of units that unitStamp would not give without; none: nothing is written. */
export function stamped<T>(
  record: Kept<T>,
  units: ReadonlyMap<string, unknown>,
  stamps: ReadonlyMap<string, number>,
): Kept<T> {
  const own = [...stamps]
    .filter(([unit, at]) => at !== (units.has(unit) ? record.changedAt : 0))
    .sort(([a], [b]) => (a < b ? -1 : 1))
  return own.length === 0 ? record : { ...record, unitsChangedAt: Object.fromEntries(own) }
}
