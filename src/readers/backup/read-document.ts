import { fieldParts } from '../../core/base/field-path.ts'
import { type Fault, failed, ok, type Result } from '../../core/base/result.ts'
import { shortText } from '../../core/base/short-text.ts'
import { type Contents, RECORD_STORES, type RecordStore } from '../../core/records/record.ts'
import { readBySchema } from '../faults.ts'
import { type Backup, FORMAT, FORMAT_VERSION } from './backup.ts'
import { frameSchema, recordSchemas } from './backup-schema.ts'
import { senseFaults } from './sense.ts'
import { fromJson } from './unread.ts'

/** One thing wrong with a backup; of which record, if it is in one. */
export interface BackupFault extends Fault {
  readonly record?: { readonly store: RecordStore; readonly name: string }
}

/** More faults than this tell nobody anything. */
export const MOST_TOLD = 50

type Document = Omit<Backup, 'pictures'>
type DocumentReading =
  | { readonly ok: true; readonly value: Document }
  | { readonly ok: false; readonly faults: readonly BackupFault[] }

/** What backup.json says, once it is parsed, or what is wrong with it: the first faults of all that it may have. */
export function readDocument(json: unknown): DocumentReading {
  const { format, version } = (json ?? {}) as { readonly format?: unknown; readonly version?: unknown }
  if (format !== FORMAT) return refuse('is not a backup of this app')
  if (typeof version === 'number' && version > FORMAT_VERSION)
    return refuse('was made by a newer version of this app; update the app first')
  const read = readBySchema(frameSchema, json)
  const records = read.ok ? readRecords(read.value.records) : read
  if (!read.ok || !records.ok) return { ok: false, faults: told(records, json) }
  const { device, madeAt, common, removed, settings, drafts } = read.value
  const unread = read.value.unread.map(({ store, id, record }) => ({ store, id, record: fromJson(record) }))
  const contents: Contents = { records: records.value, removed, unread }
  const wrong = senseFaults(contents, MOST_TOLD)
  if (wrong.length > 0) return { ok: false, faults: told(failed(wrong), json) }
  return ok({
    device,
    madeAt,
    common,
    contents,
    ...(settings === undefined ? {} : { settings }),
    drafts,
  })
}

/** One by one, and no further once there is more wrong than can be told. */
function readRecords(
  shelves: {
    readonly [Name in RecordStore]: readonly unknown[]
  },
): Result<Contents['records']> {
  const faults: Fault[] = []
  const records: Record<string, unknown[]> = {}
  for (const store of RECORD_STORES) {
    const kept: unknown[] = []
    for (const [k, raw] of shelves[store].entries()) {
      const read: Result<unknown> = readBySchema(recordSchemas[store], raw, ['records', store, k])
      if (read.ok) kept.push(read.value)
      else faults.push(...read.faults)
      if (faults.length > MOST_TOLD) return failed(faults)
    }
    records[store] = kept
  }
  return faults.length > 0 ? failed(faults) : ok(records as unknown as Contents['records'])
}

function told(reading: Result<unknown>, json: unknown): readonly BackupFault[] {
  if (reading.ok) return []
  const faults = reading.faults.slice(0, MOST_TOLD).map((each) => withRecord(each, json))
  return reading.faults.length > MOST_TOLD
    ? [...faults, { field: 'document', message: 'has more faults than these' }]
    : faults
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
  const record = { store: store as RecordStore, name: shortText(String(name)) }
  return { field: inside || field, message, record }
}

function refuse(message: string): DocumentReading {
  return { ok: false, faults: [{ field: 'document', message }] }
}
