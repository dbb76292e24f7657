import { fieldParts } from '../../core/base/field-path.ts'
import { type Fault, failed, ok, type Result } from '../../core/base/result.ts'
import {
  type Contents,
  type Kept,
  RECORD_STORES,
  type RecordStore,
  refKey,
} from '../../core/records/record.ts'
import { readBySchema } from '../faults.ts'
import { readGarment } from '../model/garment.ts'
import { readProject } from '../model/project.ts'
import {
  type Backup,
  FORMAT,
  FORMAT_VERSION,
  JSON_NAME,
  type Picture,
  pictureId,
  pictureName,
} from './backup.ts'
import { backupSchema } from './backup-schema.ts'
import { BACKUP_LIMITS } from './limits.ts'
import { fromJson } from './unread.ts'
import { listZip, unpack, type ZipEntry } from './unzip.ts'

/** One thing wrong with a backup; of which record, if it is in one. */
export interface BackupFault extends Fault {
  readonly record?: { readonly store: RecordStore; readonly name: string }
}

export type BackupReading =
  | { readonly ok: true; readonly value: Backup }
  | { readonly ok: false; readonly faults: readonly BackupFault[] }

/** The backup in a zip, or why the whole of it is refused. Nothing is inflated before its size is known to be sensible. */
export function readBackup(bytes: Uint8Array): BackupReading {
  if (bytes.length > BACKUP_LIMITS.file) return refuse('is larger than any backup')
  const listed = listZip(bytes)
  if (!listed.ok) return listed
  const odd = oddEntry(listed.value)
  if (odd) return refuse(odd)
  const json = readJson(bytes, listed.value)
  if (!json.ok) return json
  const document = readDocument(json.value)
  if (!document.ok) return document
  const pictures = readPictures(bytes, listed.value)
  if (!pictures.ok) return pictures
  const missing = document.value.contents.records.photos.filter(
    ({ id }) => !pictures.value.some((picture) => picture.id === id),
  )
  if (missing.length > 0)
    return {
      ok: false,
      faults: missing.map(({ id }) => fault(pictureName(id), 'is missing: the photo has no picture')),
    }
  return ok({ ...document.value, pictures: pictures.value })
}

/** What makes the list of the zip one that no backup has, if anything. */
function oddEntry(entries: readonly ZipEntry[]): string | null {
  const names = entries.map(({ name }) => name)
  if (!names.includes(JSON_NAME)) return `is not a backup of this app: it holds no “${JSON_NAME}”`
  const doubled = names.find((name, k) => names.indexOf(name) !== k)
  if (doubled !== undefined) return `holds “${doubled}” twice`
  if (names.length > BACKUP_LIMITS.photos) return 'holds more files than any backup'
  for (const { name, size, packed } of entries) {
    if (name === JSON_NAME) {
      if (size > BACKUP_LIMITS.json) return `holds a “${name}” that is larger than any backup’s`
      continue
    }
    if (pictureId(name) === null) return `holds “${name}”, which no backup of this app does`
    if (size > BACKUP_LIMITS.photo || packed < size * BACKUP_LIMITS.leastShare)
      return `holds “${name}”, which would grow larger than any photo`
  }
  return null
}

function readJson(bytes: Uint8Array, entries: readonly ZipEntry[]): Result<unknown> {
  const entry = entries.find(({ name }) => name === JSON_NAME)
  const content = entry && unpack(bytes, entry)
  if (!content) return refuse(`is damaged: “${JSON_NAME}” in it cannot be unpacked`)
  try {
    return ok(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(content)))
  } catch {
    return refuse(`is damaged: “${JSON_NAME}” in it is not JSON`)
  }
}

type Document = Omit<Backup, 'pictures'>

function readDocument(json: unknown): Result<Document> | BackupReading {
  const { format, version } = (json ?? {}) as { readonly format?: unknown; readonly version?: unknown }
  if (format !== FORMAT) return refuse('is not a backup of this app')
  if (typeof version === 'number' && version > FORMAT_VERSION)
    return refuse('was made by a newer version of this app; update the app first')
  const read = readBySchema(backupSchema, json)
  if (!read.ok) return { ok: false, faults: read.faults.map((each) => withRecord(each, json)) }
  const { device, madeAt, common, removed, settings, drafts } = read.value
  const records = read.value.records as Contents['records']
  const unread = read.value.unread.map(({ store, id, record }) => ({ store, id, record: fromJson(record) }))
  const contents: Contents = { records, removed, unread }
  const wrong = senseFaults(contents)
  if (wrong.length > 0) return { ok: false, faults: wrong.map((each) => withRecord(each, json)) }
  return ok({
    device,
    madeAt,
    common,
    contents,
    ...(settings === undefined ? {} : { settings }),
    drafts,
  })
}

/** What the schema cannot see: records twice or under another's id, outlines that cross themselves. */
function senseFaults({ records, removed, unread }: Contents): readonly Fault[] {
  const faults: Fault[] = []
  const seen = new Set<string>()
  const once = (store: RecordStore, id: string, field: string) => {
    const key = refKey({ store, id })
    if (seen.has(key)) faults.push(fault(field, 'is there twice'))
    seen.add(key)
  }
  for (const store of RECORD_STORES) {
    records[store].forEach(({ id, value }, k) => {
      const field = `records.${store}[${k}]`
      once(store, id, field)
      if (value.id !== id) faults.push(fault(`${field}.value.id`, 'must be the id of its record'))
    })
  }
  for (const [k, { store, id }] of removed.entries()) once(store, id, `removed[${k}]`)
  for (const [k, { store, id, record }] of unread.entries()) {
    once(store, id, `unread[${k}]`)
    if ((record as { id?: unknown } | null)?.id !== id)
      faults.push(fault(`unread[${k}].record.id`, 'must be the id of its record'))
  }
  faults.push(...gateFaults('garments', records.garments, readGarment))
  faults.push(...gateFaults('projects', records.projects, readProject))
  return faults
}

/** Of the kinds whose gate asks for more than its schema. */
function gateFaults(
  store: RecordStore,
  records: readonly Kept<unknown>[],
  gate: (raw: unknown) => Result<unknown>,
): readonly Fault[] {
  return records.flatMap(({ value }, k) => {
    const read = gate(value)
    if (read.ok) return []
    return read.faults.map(({ field, message }) => fault(`records.${store}[${k}].value.${field}`, message))
  })
}

/** Tells of which record the fault is, by its name, and the field within it. */
function withRecord({ field, message }: Fault, json: unknown): BackupFault {
  const [root, store, index, part] = fieldParts(field)
  if (root !== 'records' || !RECORD_STORES.includes(store as RecordStore) || typeof index !== 'number')
    return { field, message }
  const records = (json as { records?: Record<string, readonly unknown[]> }).records?.[store as RecordStore]
  const value = (records?.[index] as { value?: { name?: unknown; id?: unknown } } | null)?.value
  const name =
    [value?.name, value?.id].find((each) => typeof each === 'string' && each !== '') ?? `${index + 1}`
  const prefix = `records.${store}[${index}]${part === 'value' ? '.value' : ''}`
  const inside = field.slice(prefix.length).replace(/^\./, '')
  return { field: inside || field, message, record: { store: store as RecordStore, name: String(name) } }
}

/** A JPEG begins with its mark “start of image” and the first byte of the next mark (ITU-T T.81, B.1.1.3). */
const JPEG = [0xff, 0xd8, 0xff]

function readPictures(bytes: Uint8Array, entries: readonly ZipEntry[]): Result<readonly Picture[]> {
  const pictures: Picture[] = []
  for (const entry of entries) {
    const id = pictureId(entry.name)
    if (id === null) continue
    const content = unpack(bytes, entry)
    if (!content) return refuse(`is damaged: “${entry.name}” in it cannot be unpacked`)
    if (JPEG.some((byte, k) => content[k] !== byte))
      return refuse(`holds “${entry.name}”, which is no JPEG picture`)
    pictures.push({ id, picture: new Blob([content], { type: 'image/jpeg' }) })
  }
  return ok(pictures)
}

function fault(field: string, message: string): Fault {
  return { field, message }
}

function refuse(message: string): Result<never> {
  return failed([fault('document', message)])
}
