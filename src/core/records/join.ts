import { canonical } from './canonical.ts'
import type { Kept, RecordStore } from './record.ts'
import { fromUnits, hasUnits, isUnited, listsOf, stamped, unitStamp, unitsOf } from './units.ts'

/** A unit that the two records do not agree on, and which of them it is taken from; null: from both. */
export interface UnitChoice {
  readonly unit: string
  readonly from: 'a' | 'b' | null
  /** When it was changed in a and in b. */
  readonly stamps: readonly [number, number]
}

type Fields = Readonly<Record<string, unknown>>
type Units = ReadonlyMap<string, Fields>

/**
 * Two states of one record as one: of each unit the later change, at equal times the greater text. Commutative,
 * associative and idempotent, since that is the greater of two in one order, unit by unit. A state that says all of it
 * already is given back as it is.
 */
export function joinKept<T extends { readonly id: string }>(
  store: RecordStore,
  a: Kept<T>,
  b: Kept<T>,
): Kept<T> {
  if (canonical(a) === canonical(b)) return a
  if (!hasUnits(store)) return wholeLater(a, b)
  const [inA, inB] = [unitsOf(store, a.value), unitsOf(store, b.value)]
  const units = new Map<string, Fields>()
  const stamps = new Map<string, number>()
  for (const unit of unitNames(a, b, inA, inB)) {
    const [ofA, ofB] = [inA.get(unit), inB.get(unit)]
    const fields = isUnited(store, unit) ? united(ofA, ofB) : isFromA(a, b, unit, ofA, ofB) ? ofA : ofB
    if (fields !== undefined) units.set(unit, fields)
    stamps.set(unit, Math.max(unitStamp(a, unit, inA.has(unit)), unitStamp(b, unit, inB.has(unit))))
  }
  const [keptAt, changedAt] = [Math.min(a.keptAt, b.keptAt), Math.max(a.changedAt, b.changedAt)]
  const saying = textOf({ keptAt, changedAt }, units, stamps)
  const there = [a, b].filter((side) => textOfKept(store, side) === saying)
  if (there.length > 0) return there.length === 1 || canonical(a) >= canonical(b) ? (there[0] as Kept<T>) : b
  const value = fromUnits<T>(store, a.id, units, listsOf(a.value))
  return stamped({ id: a.id, value, keptAt, changedAt }, units, stamps)
}

/** What a record says in one text, in whichever order its lists of things with ids are. */
function textOfKept(store: RecordStore, kept: Kept<unknown>): string {
  const units = unitsOf(store, kept.value)
  const names = new Set([...units.keys(), ...Object.keys(kept.unitsChangedAt ?? {})])
  return textOf(
    kept,
    units,
    new Map([...names].map((unit) => [unit, unitStamp(kept, unit, units.has(unit))])),
  )
}

function textOf(
  { keptAt, changedAt }: { readonly keptAt: number; readonly changedAt: number },
  units: Units,
  stamps: ReadonlyMap<string, number>,
): string {
  return canonical([keptAt, changedAt, Object.fromEntries(units), Object.fromEntries(stamps)])
}

/** The units that two records do not agree on. */
export function unitChoices<T>(store: RecordStore, a: Kept<T>, b: Kept<T>): readonly UnitChoice[] {
  const [inA, inB] = [unitsOf(store, a.value), unitsOf(store, b.value)]
  return unitNames(a, b, inA, inB).flatMap((unit): UnitChoice[] => {
    const [ofA, ofB] = [inA.get(unit), inB.get(unit)]
    if (canonical(ofA) === canonical(ofB)) return []
    const stamps = [unitStamp(a, unit, inA.has(unit)), unitStamp(b, unit, inB.has(unit))] as const
    if (isUnited(store, unit)) return [{ unit, from: null, stamps }]
    return [{ unit, from: isFromA(a, b, unit, ofA, ofB) ? 'a' : 'b', stamps }]
  })
}

/** A unit that was emptied has a time and no fields. */
function unitNames(a: Kept<unknown>, b: Kept<unknown>, inA: Units, inB: Units): readonly string[] {
  const timed = [a, b].flatMap(({ unitsChangedAt }) => Object.keys(unitsChangedAt ?? {}))
  return [...new Set([...inA.keys(), ...inB.keys(), ...timed])].sort()
}

function isFromA(a: Kept<unknown>, b: Kept<unknown>, unit: string, ofA: unknown, ofB: unknown): boolean {
  const later = unitStamp(a, unit, ofA !== undefined) - unitStamp(b, unit, ofB !== undefined)
  return later !== 0 ? later > 0 : canonical(ofA) >= canonical(ofB)
}

/** All ids of both lists, once; lists that differ lose their order. */
function united(a: Fields | undefined, b: Fields | undefined): Fields | undefined {
  if (a === undefined || b === undefined || canonical(a) === canonical(b)) return a ?? b
  const lists = [a, b].map((fields) => Object.entries(fields)[0] as readonly [string, readonly string[]])
  const [field] = lists[0] as readonly [string, readonly string[]]
  return { [field]: [...new Set(lists.flatMap(([, ids]) => ids))].sort() }
}

function wholeLater<T>(a: Kept<T>, b: Kept<T>): Kept<T> {
  if (a.changedAt !== b.changedAt) return a.changedAt > b.changedAt ? a : b
  return canonical(a) >= canonical(b) ? a : b
}
