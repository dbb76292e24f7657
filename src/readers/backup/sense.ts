import type { Fault, Result } from '../../core/base/result.ts'
import {
  type Contents,
  type Kept,
  RECORD_STORES,
  type RecordStore,
  refKey,
} from '../../core/records/record.ts'
import { readGarment } from '../model/garment.ts'
import { readProject } from '../model/project.ts'

/** What the schema cannot see, `most` faults or a few more: records twice or under another's id, or that make no sense. */
export function senseFaults(contents: Contents, most: number): readonly Fault[] {
  const faults: Fault[] = []
  for (const fault of allFaults(contents)) {
    faults.push(fault)
    if (faults.length > most) break
  }
  return faults
}

function* allFaults(contents: Contents): Generator<Fault> {
  yield* idFaults(contents)
  yield* gateFaults('garments', contents.records.garments, readGarment)
  yield* gateFaults('projects', contents.records.projects, readProject)
}

function* idFaults({ records, removed, unread }: Contents): Generator<Fault> {
  const seen = new Set<string>()
  const isNew = (store: RecordStore, id: string) => seen.size < seen.add(refKey({ store, id })).size
  for (const store of RECORD_STORES) {
    for (const [k, { id, value }] of records[store].entries()) {
      const field = `records.${store}[${k}]`
      if (!isNew(store, id)) yield twice(field)
      if (value.id !== id) yield otherId(`${field}.value.id`)
    }
  }
  for (const [k, { store, id }] of removed.entries()) if (!isNew(store, id)) yield twice(`removed[${k}]`)
  for (const [k, { store, id, record }] of unread.entries()) {
    if (!isNew(store, id)) yield twice(`unread[${k}]`)
    if ((record as { id?: unknown } | null)?.id !== id) yield otherId(`unread[${k}].record.id`)
  }
}

function twice(field: string): Fault {
  return { field, message: 'is there twice' }
}

function otherId(field: string): Fault {
  return { field, message: 'must be the id of its record' }
}

/** Of the kinds whose gate asks for more than its schema. */
function* gateFaults(
  store: RecordStore,
  records: readonly Kept<unknown>[],
  gate: (raw: unknown) => Result<unknown>,
): Generator<Fault> {
  for (const [k, { value }] of records.entries()) {
    const read = gate(value)
    if (read.ok) continue
    for (const { field, message } of read.faults)
      yield { field: `records.${store}[${k}].value.${field}`, message }
  }
}
