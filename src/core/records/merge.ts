import type { Garment } from '../garments/garment.ts'
import { canonical } from './canonical.ts'
import { type Difference, differencesOf } from './differences.ts'
import {
  contentsOf,
  type Entries,
  type Entry,
  entriesAgree,
  entriesOf,
  joinEntries,
  laterEntry,
} from './entries.ts'
import { unitChoices } from './join.ts'
import { type CommonState, type Contents, type RecordRef, refKey } from './record.ts'
import { type Grave, type Graves, type Settlement, settle } from './settle/settle.ts'
import { hasUnits } from './units.ts'

/** One of two devices that are merged. */
export interface Side {
  readonly device: string
  readonly contents: Contents
  readonly common: readonly CommonState[]
}

/** Both sides changed the record since they last had the same of it. */
export interface Conflict extends RecordRef {
  /** Whose record was the later. */
  readonly taken: 'here' | 'there'
  /** The units that both changed, each with the side it is taken from; none: the record is taken as a whole. */
  readonly units: readonly ConflictUnit[]
}

export interface ConflictUnit {
  /** As units.ts names it: `name`, `cloth.colour`. */
  readonly unit: string
  readonly taken: 'here' | 'there'
}

export interface Merge {
  readonly contents: Contents
  /** What changes on this device. */
  readonly differences: readonly Difference[]
  readonly conflicts: readonly Conflict[]
  /** What had to give way so that the stash as a whole makes sense. */
  readonly settlements: readonly Settlement[]
}

/**
 * Brings two devices' records together: of each record the later change or removal, of two changes each field's
 * later, then whatever the stash as a whole demands (settle). Which side is here and which is there makes no difference to the contents, and merging the
 * result with either side again changes nothing.
 */
export function mergeContents(here: Side, there: Side): Merge {
  const ours = entriesOf(here.contents)
  const theirs = entriesOf(there.contents)
  const settled = settle(joined(ours, theirs), graves(ours, theirs), photoListsOf(ours, theirs))
  const entries = asTheyWere(settled.entries, ours)
  return {
    contents: contentsOf(entries),
    differences: differencesOf(ours, entries),
    conflicts: conflictsOf(ours, theirs, basesOf(here, there)),
    settlements: settled.settlements,
  }
}

function joined(ours: Entries, theirs: Entries): Entries {
  const merged = new Map(ours)
  for (const [key, entry] of theirs) {
    const own = ours.get(key)
    merged.set(key, own ? joinEntries(own, entry) : entry)
  }
  return merged
}

/** Garments that both sides have with other photos, or with the same in another order. */
function photoListsOf(ours: Entries, theirs: Entries): readonly string[] {
  return [...ours].flatMap(([key, own]) => {
    const other = theirs.get(key)
    if (own.store !== 'garments' || own.state !== 'kept' || other?.state !== 'kept') return []
    const [here, there] = [own, other].map(({ kept }) => canonical((kept.value as Garment).photos))
    return here === there ? [] : [own.id]
  })
}

/** What settling has put back to what it was is the very entry of this side: nothing of it has to be written. */
function asTheyWere(entries: Entries, ours: Entries): Entries {
  const same = new Map(entries)
  for (const [key, entry] of entries) {
    const own = ours.get(key)
    if (own?.state !== 'kept' || entry.state !== 'kept' || own === entry) continue
    if (canonical(own.kept) === canonical(entry.kept)) same.set(key, own)
  }
  return same
}

/** The last that is known of records removed on one side and still there on the other. */
function graves(ours: Entries, theirs: Entries): Graves {
  const dead = new Map<string, Grave>()
  for (const [one, other] of [
    [ours, theirs],
    [theirs, ours],
  ] as const) {
    for (const [key, last] of one) {
      if (last.state === 'kept' && other.get(key)?.state === 'removed')
        dead.set(key, { last, removedFrom: other })
    }
  }
  return dead
}

/** Every state that both sides are known to have had in common. */
function basesOf(here: Side, there: Side): readonly CommonState[] {
  return [
    ...here.common.filter(({ device }) => device === there.device),
    ...there.common.filter(({ device }) => device === here.device),
  ]
}

function conflictsOf(ours: Entries, theirs: Entries, bases: readonly CommonState[]): readonly Conflict[] {
  const conflicts: Conflict[] = []
  for (const [key, own] of ours) {
    const other = theirs.get(key)
    if (!other || entriesAgree(own, other)) continue
    const untouched = ({ stamps }: CommonState) => stamps[key] === own.stamp || stamps[key] === other.stamp
    if (bases.some(untouched)) continue
    const { store, id } = own
    const units = unitsInConflict(own, other, bases)
    if (units?.length !== 0)
      conflicts.push({
        store,
        id,
        taken: laterEntry(own, other) === own ? 'here' : 'there',
        units: units ?? [],
      })
  }
  return conflicts
}

/** The units that both sides changed since any state in common; null: the record is taken as a whole. */
function unitsInConflict(
  own: Entry,
  other: Entry,
  bases: readonly CommonState[],
): readonly ConflictUnit[] | null {
  if (own.state !== 'kept' || other.state !== 'kept' || !hasUnits(own.store)) return null
  const [here, there] = [own.kept, other.kept]
  const key = refKey(own)
  return unitChoices(own.store, here, there).flatMap(({ unit, from, stamps }) => {
    const untouched = bases.some((base) => stamps.some((at) => at <= (base.stamps[key] ?? -1)))
    return from === null || untouched ? [] : [{ unit, taken: from === 'a' ? 'here' : 'there' } as const]
  })
}
