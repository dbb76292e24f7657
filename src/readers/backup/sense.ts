import type { Fault, Result } from '../../core/base/result.ts'
import { shortText } from '../../core/base/short-text.ts'
import {
  type Contents,
  type Kept,
  RECORD_STORES,
  type RecordStore,
  refKey,
} from '../../core/records/record.ts'
import { eachOverlap } from '../../core/stash/overlaps.ts'
import { readGarment } from '../model/garment.ts'
import { readProject } from '../model/project.ts'

/**
 * What no record's own schema can see, `most` faults or a few more: records twice or under another's id, that make no
 * sense, that hang on what is not there, or that have one place in common. A reservation that its garment, measured anew,
 * has no longer is none of them, nor is a photo that is gone: the app itself comes to have those, and tells of them.
 */
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
  yield* danglingFaults(contents)
  yield* cutTwiceFaults(contents)
  yield* overlapFaults(contents)
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

/** Records that cannot be without another, which is not there (as core/records/settle has it). */
function* danglingFaults({ records, unread }: Contents): Generator<Fault> {
  const there = new Set(unread.map(refKey))
  for (const store of RECORD_STORES) for (const { id } of records[store]) there.add(refKey({ store, id }))
  const cuts = new Map(records.cuts.map(({ id, value }) => [id, value]))
  function* needed(store: RecordStore, k: number, parent: RecordStore, field: string, id: string) {
    if (!there.has(refKey({ store: parent, id })))
      yield {
        field: `records.${store}[${k}].value.${field}`,
        message: `must be the id of a ${field} in the file`,
      }
  }
  for (const [k, { value }] of records.reservations.entries()) {
    yield* needed('reservations', k, 'garments', 'garment', value.garment)
    yield* needed('reservations', k, 'projects', 'project', value.project)
  }
  for (const [k, { value }] of records.cuts.entries())
    yield* needed('cuts', k, 'garments', 'garment', value.garment)
  for (const [k, { value }] of records.offcuts.entries()) {
    yield* needed('offcuts', k, 'garments', 'garment', value.garment)
    yield* needed('offcuts', k, 'cuts', 'cut', value.cut)
    const cut = cuts.get(value.cut)
    if (cut && cut.garment !== value.garment)
      yield { field: `records.offcuts[${k}].value.garment`, message: 'must be that of its cut' }
  }
}

/** Cloth is cut once. */
function* cutTwiceFaults({ records }: Contents): Generator<Fault> {
  const panels = new Set<string>()
  for (const [k, { value }] of records.cuts.entries()) {
    const panel = JSON.stringify([value.garment, value.panel])
    if (panels.has(panel))
      yield { field: `records.cuts[${k}].value.panel`, message: 'is cut by another cut too' }
    panels.add(panel)
  }
}

/** By the code that asks before a reservation is written. */
function* overlapFaults({ records }: Contents): Generator<Fault> {
  const reservations = records.reservations.map(({ value }) => value)
  const at = new Map(reservations.map(({ id }, k) => [id, k]))
  for (const { first, second } of eachOverlap(reservations)) {
    const k = at.get(second.reservation) as number
    const own = reservations[k]?.pieces.findIndex(
      ({ piece, copy, panel, outline }) =>
        piece === second.piece &&
        copy === second.copy &&
        panel === second.panel &&
        outline === second.outline,
    )
    yield {
      field: `records.reservations[${k}].value.pieces[${own}]`,
      message: `lies on piece “${shortText(first.piece)}” ${first.copy} of reservation “${shortText(first.reservation)}”`,
    }
  }
}
