import type { DBSchema } from 'idb'
import type { Garment } from '../core/garments/garment.ts'
import type { Notion } from '../core/notions/notion.ts'
import type { Pattern } from '../core/patterns/pattern.ts'
import type { Cut, Offcut } from '../core/stash/cut.ts'
import type { Photo } from '../core/stash/photo.ts'
import type { Project } from '../core/stash/project.ts'
import type { Reservation } from '../core/stash/reservation.ts'
import type { Settings } from './stores/settings.ts'

/** An entity as it is stored. `id` is the value's own; the times, ms since 1970, serve sorting and merging. */
export interface Kept<T> {
  readonly id: string
  readonly value: T
  readonly keptAt: number
  readonly changedAt: number
}

/** The picture is beside the facts, so that a list need not load it. */
export interface StoredPicture {
  readonly id: string
  /** JPEG. */
  readonly picture: Blob
}

/** A record that is no more: another device that still has it learns so when the two are merged. */
export interface Removed {
  readonly store: RecordStore
  readonly id: string
  readonly removedAt: number
}

/**
 * The newest schema, as the last file in upgrades/ leaves it. It types what we write; what we read passes a
 * gate first, because it may have been written by an older version of the app.
 */
export interface Schema extends DBSchema {
  garments: { key: string; value: Kept<Garment> }
  /** The user's own; the patterns that come with the app are not stored. */
  patterns: { key: string; value: Kept<Pattern> }
  projects: { key: string; value: Kept<Project> }
  reservations: { key: string; value: Kept<Reservation>; indexes: { garment: string; project: string } }
  cuts: { key: string; value: Kept<Cut>; indexes: { garment: string; project: string } }
  offcuts: { key: string; value: Kept<Offcut>; indexes: { garment: string } }
  notions: { key: string; value: Kept<Notion> }
  photos: { key: string; value: Kept<Photo> }
  pictures: { key: string; value: StoredPicture }
  removed: { key: [RecordStore, string]; value: Removed }
  /** The check under way, one record. Its type is the screen's. */
  drafts: { key: typeof CHECK_DRAFT; value: unknown }
  settings: { key: typeof ALL_SETTINGS; value: Settings }
}

/** What is stored of each kind of record. */
export interface Records {
  garments: Garment
  patterns: Pattern
  projects: Project
  reservations: Reservation
  cuts: Cut
  offcuts: Offcut
  notions: Notion
  photos: Photo
}

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
] as const satisfies readonly (keyof Records)[]
export type RecordStore = keyof Records

export type StoreName = RecordStore | 'pictures' | 'removed' | 'drafts' | 'settings'

export const CHECK_DRAFT = 'check'
export const ALL_SETTINGS = 'all'
