import type { DBSchema } from 'idb'
import type { Garment } from '../core/garments/garment.ts'
import type { Pattern } from '../core/patterns/pattern.ts'
import type { Settings } from './stores/settings.ts'

/** An entity as it is stored. `id` is the value's own; the times, ms since 1970, serve sorting and merging. */
export interface Kept<T> {
  readonly id: string
  readonly value: T
  readonly keptAt: number
  readonly changedAt: number
}

/**
 * The newest schema, as the last file in upgrades/ leaves it. It types what we write; what we read passes a
 * gate first, because it may have been written by an older version of the app.
 */
export interface Schema extends DBSchema {
  garments: { key: string; value: Kept<Garment> }
  /** The user's own; the patterns that come with the app are not stored. */
  patterns: { key: string; value: Kept<Pattern> }
  /** The check under way, one record. Its type is the screen's. */
  drafts: { key: typeof CHECK_DRAFT; value: unknown }
  settings: { key: typeof ALL_SETTINGS; value: Settings }
}

export type StoreName = 'garments' | 'patterns' | 'drafts' | 'settings'

export const CHECK_DRAFT = 'check'
export const ALL_SETTINGS = 'all'
