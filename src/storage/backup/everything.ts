import { type Contents, type Kept, RECORD_STORES } from '../../core/records/record.ts'
import type { Gate } from '../reading.ts'
import type { Device, StoredPicture, StoreName } from '../schema.ts'

/** All that is stored on a device. */
export interface Everything {
  readonly contents: Contents
  readonly pictures: readonly StoredPicture[]
  /** As they are stored; absent: none. */
  readonly settings?: unknown
  /** By their keys, as they are stored: what is being typed. */
  readonly drafts: Readonly<Record<string, unknown>>
}

/** What came in a file from a device, be it this one. */
export interface FromFile extends Everything {
  readonly device: string
  readonly madeAt: number
  readonly common: Device['common']
}

export const ALL_STORES = [
  ...RECORD_STORES,
  'removed',
  'pictures',
  'drafts',
  'settings',
  'device',
] as const satisfies StoreName[]

/** A stored record as its gate reads it, or null if this version of the app cannot read it. */
export function readable<T>(stored: unknown, gate: Gate<T>): Kept<T> | null {
  const { id, value, keptAt, changedAt, unitsChangedAt } = stored as Kept<unknown>
  if (!isTime(keptAt) || !isTime(changedAt)) return null
  const read = gate(value)
  if (!read.ok) return null
  const record = { id, value: read.value, keptAt, changedAt }
  return unitsChangedAt && Object.values(unitsChangedAt).every(isTime)
    ? { ...record, unitsChangedAt }
    : record
}

function isTime(time: unknown): boolean {
  return typeof time === 'number' && time >= 0 && time < 253_402_300_800_000
}
