import { type Entries, type Entry, entriesAgree } from './entries.ts'
import type { RecordRef } from './record.ts'

/** What becomes of one record of this device. A record of the other device that it never had comes. */
export interface Difference extends RecordRef {
  readonly what: 'comes' | 'changes' | 'goes'
}

/** What it takes to get from one set of records to another, times apart. */
export function differencesOf(before: Entries, after: Entries): readonly Difference[] {
  const differences: Difference[] = []
  for (const key of new Set([...before.keys(), ...after.keys()])) {
    const [was, is] = [before.get(key), after.get(key)]
    if (entriesAgree(was, is)) continue
    const { store, id } = (is ?? was) as Entry
    differences.push({ store, id, what: !isThere(is) ? 'goes' : isThere(was) ? 'changes' : 'comes' })
  }
  return differences
}

function isThere(entry: Entry | undefined): boolean {
  return entry !== undefined && entry.state !== 'removed'
}
