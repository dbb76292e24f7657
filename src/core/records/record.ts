import type { Garment } from '../garments/garment.ts'
import type { Notion } from '../notions/notion.ts'
import type { Pattern } from '../patterns/pattern.ts'
import type { Cut, Offcut } from '../stash/cut.ts'
import type { Photo } from '../stash/photo.ts'
import type { Project } from '../stash/project.ts'
import type { Reservation } from '../stash/reservation.ts'

/** An entity as it is stored. `id` is the value's own; the times, ms since 1970, serve sorting and merging. */
export interface Kept<T> {
  readonly id: string
  readonly value: T
  readonly keptAt: number
  readonly changedAt: number
  /** When single units of it were changed last (units.ts), where that is not `changedAt`. */
  readonly unitsChangedAt?: Readonly<Record<string, number>>
}

/** A record that is no more: another device that still has it learns so when the two are merged. */
export interface Removed {
  readonly store: RecordStore
  readonly id: string
  readonly removedAt: number
}

/** What is stored of each kind of record. */
export interface Records {
  garments: Garment
  /** The user's own; the patterns that come with the app are not stored. */
  patterns: Pattern
  projects: Project
  reservations: Reservation
  cuts: Cut
  offcuts: Offcut
  notions: Notion
  photos: Photo
}
export type RecordStore = keyof Records

/** Stores of many records with times, that go into a backup and are merged record by record. */
export const RECORD_STORES = [
  'garments',
  'patterns',
  'projects',
  'reservations',
  'cuts',
  'offcuts',
  'notions',
  'photos',
] as const satisfies readonly RecordStore[]

/** One record, wherever it is. */
export interface RecordRef {
  readonly store: RecordStore
  readonly id: string
}

/** A record as one text, for maps. */
export function refKey({ store, id }: RecordRef): string {
  return `${store}/${id}`
}

/** A stored record that this version of the app cannot read. It is carried as it lies there. */
export interface UnreadRecord extends RecordRef {
  readonly record: unknown
}

/** All records of one device. A record is in one of the three lists only, and in it once. */
export interface Contents {
  readonly records: { readonly [Name in RecordStore]: readonly Kept<Records[Name]>[] }
  readonly removed: readonly Removed[]
  readonly unread: readonly UnreadRecord[]
}

export const NO_CONTENTS: Contents = {
  records: {
    garments: [],
    patterns: [],
    projects: [],
    reservations: [],
    cuts: [],
    offcuts: [],
    notions: [],
    photos: [],
  },
  removed: [],
  unread: [],
}

/**
 * What another device held when its file was last taken up here, by the time of each record's last change or
 * removal: a record that still has that time has not been touched there since.
 */
export interface CommonState {
  /** Id of the other device. */
  readonly device: string
  /** When its file was made, by its own clock. */
  readonly at: number
  /** By refKey. */
  readonly stamps: Readonly<Record<string, number>>
}
