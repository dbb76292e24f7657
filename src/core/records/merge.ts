import { type Difference, differencesOf } from './differences.ts'
import { contentsOf, type Entries, entriesAgree, entriesOf, laterEntry } from './entries.ts'
import type { CommonState, Contents, RecordRef } from './record.ts'
import { type Grave, type Graves, type Settlement, settle } from './settle/settle.ts'

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
 * Brings two devices' records together: of each record the later change or removal, then whatever the stash as a whole
 * demands (settle). Which side is here and which is there makes no difference to the contents, and merging the
 * result with either side again changes nothing.
 */
export function mergeContents(here: Side, there: Side): Merge {
  const ours = entriesOf(here.contents)
  const theirs = entriesOf(there.contents)
  const settled = settle(later(ours, theirs), graves(ours, theirs))
  return {
    contents: contentsOf(settled.entries),
    differences: differencesOf(ours, settled.entries),
    conflicts: conflictsOf(ours, theirs, basesOf(here, there)),
    settlements: settled.settlements,
  }
}

function later(ours: Entries, theirs: Entries): Entries {
  const merged = new Map(ours)
  for (const [key, entry] of theirs) {
    const own = ours.get(key)
    merged.set(key, own ? laterEntry(own, entry) : entry)
  }
  return merged
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
    conflicts.push({ store, id, taken: laterEntry(own, other) === own ? 'here' : 'there' })
  }
  return conflicts
}
