import { canonical } from './canonical.ts'
import { joinKept } from './join.ts'
import {
  type Contents,
  type Kept,
  NO_CONTENTS,
  RECORD_STORES,
  type RecordRef,
  type RecordStore,
  type Records,
  refKey,
} from './record.ts'

/** A record in whichever state it is; `stamp` is the time of its last change. */
export type Entry = RecordRef & { readonly stamp: number } & (
    | { readonly state: 'kept'; readonly kept: Kept<Records[RecordStore]> }
    | { readonly state: 'unread'; readonly record: unknown }
    | { readonly state: 'removed' }
  )

/** By refKey. */
export type Entries = ReadonlyMap<string, Entry>

/** All records as one map. Two entries of one record become one. */
export function entriesOf({ records, removed, unread }: Contents): Map<string, Entry> {
  const entries = new Map<string, Entry>()
  const add = (entry: Entry) => {
    const key = refKey(entry)
    const there = entries.get(key)
    entries.set(key, there ? joinEntries(there, entry) : entry)
  }
  for (const store of RECORD_STORES)
    for (const kept of records[store]) add({ store, id: kept.id, stamp: kept.changedAt, state: 'kept', kept })
  for (const { store, id, record } of unread)
    add({ store, id, stamp: stampOfUnread(record), state: 'unread', record })
  for (const { store, id, removedAt } of removed) add({ store, id, stamp: removedAt, state: 'removed' })
  return entries
}

/** The reverse of entriesOf; every list in the order of ids. */
export function contentsOf(entries: Entries): Contents {
  const records = Object.fromEntries(RECORD_STORES.map((name) => [name, [] as unknown[]]))
  const removed = [...NO_CONTENTS.removed]
  const unread = [...NO_CONTENTS.unread]
  for (const key of [...entries.keys()].sort()) {
    const entry = entries.get(key) as Entry
    const { store, id } = entry
    if (entry.state === 'kept') records[store]?.push(entry.kept)
    else if (entry.state === 'unread') unread.push({ store, id, record: entry.record })
    else removed.push({ store, id, removedAt: entry.stamp })
  }
  return { records: records as unknown as Contents['records'], removed, unread }
}

/** At equal times what is kept goes before what is not, and then the order of their texts: the same on both devices. */
const STATES = ['kept', 'unread', 'removed'] as const

/**
 * Two entries of one record as one: the later of a change and a removal, and of two changes each unit's later. Which is
 * given first makes no difference.
 */
export function joinEntries(a: Entry, b: Entry): Entry {
  if (a.state !== 'kept' || b.state !== 'kept') return laterEntry(a, b)
  const kept = joinKept(a.store, a.kept, b.kept)
  if (kept === a.kept) return a
  return kept === b.kept ? b : { ...a, stamp: kept.changedAt, kept }
}

/** The entry of the later change. Which one is given first makes no difference. */
export function laterEntry(a: Entry, b: Entry): Entry {
  if (a.stamp !== b.stamp) return a.stamp > b.stamp ? a : b
  const byState = STATES.indexOf(a.state) - STATES.indexOf(b.state)
  if (byState !== 0) return byState < 0 ? a : b
  return textOf(a) >= textOf(b) ? a : b
}

/** True if both say the same of the record, whenever that was said. */
export function entriesAgree(a: Entry | undefined, b: Entry | undefined): boolean {
  // Never had and had no more is the same.
  if (a === undefined || b === undefined) return (a ?? b)?.state === 'removed' || a === b
  return a.state === b.state && sayingOf(a) === sayingOf(b)
}

/** What the entry says, without its times. */
function sayingOf(entry: Entry): string {
  return entry.state === 'kept' ? canonical(entry.kept.value) : textOf(entry)
}

function textOf(entry: Entry): string {
  if (entry.state === 'kept') return canonical(entry.kept)
  return entry.state === 'unread' ? canonical(entry.record) : ''
}

/** When an unread record was changed, if it says so where all records do. */
function stampOfUnread(record: unknown): number {
  const stamp = (record as { readonly changedAt?: unknown } | null)?.changedAt
  return typeof stamp === 'number' && Number.isFinite(stamp) ? stamp : 0
}
