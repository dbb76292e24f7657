import type { DBSchema } from 'idb'
import type { Garment } from '../core/garments/garment.ts'
import type { Notion } from '../core/notions/notion.ts'
import type { Pattern } from '../core/patterns/pattern.ts'
import type { CommonState, Kept, RecordStore, Removed } from '../core/records/record.ts'
import type { Cut, Offcut } from '../core/stash/cut.ts'
import type { Photo } from '../core/stash/photo.ts'
import type { Project } from '../core/stash/project.ts'
import type { Reservation } from '../core/stash/reservation.ts'
import type { Settings } from './stores/settings.ts'

export type { Kept, RecordStore, Records, Removed } from '../core/records/record.ts'
export { RECORD_STORES } from '../core/records/record.ts'

/** The picture is beside the facts, so that a list need not load it. */
export interface StoredPicture {
  readonly id: string
  /** JPEG. */
  readonly picture: Blob
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
  /** The check under way, what to look for and the like, one record each. Their types are the screens'. */
  drafts: {
    key: typeof CHECK_DRAFT | typeof LOOK_FOR | typeof CUT_TICKS | typeof UNFINISHED
    value: unknown
  }
  settings: { key: typeof ALL_SETTINGS; value: Settings }
  /** What this device alone knows, one record. */
  device: { key: typeof THIS_DEVICE; value: Device }
}

export interface Device {
  /** Made at random when it was first asked for. */
  readonly id: string
  /** ms since 1970; null: never. */
  readonly backedUpAt: number | null
  /** One for each other device whose file was taken up here. */
  readonly common: readonly CommonState[]
}

export type StoreName = RecordStore | 'pictures' | 'removed' | 'drafts' | 'settings' | 'device'

export const CHECK_DRAFT = 'check'
export const CUT_TICKS = 'cut-ticks'
export const LOOK_FOR = 'look-for'
export const UNFINISHED = 'unfinished'
export const ALL_SETTINGS = 'all'
export const THIS_DEVICE = 'this'
