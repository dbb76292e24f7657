import type { Entries } from '../entries.ts'
import { dropSecondCuts } from './cuts.ts'
import { keepParents, removeOrphans } from './parents.ts'
import { settlePhotos } from './photos.ts'
import { settleReservations } from './reservations.ts'
import { type Graves, type Settlement, Settling } from './state.ts'

export type { Grave, Graves, Settlement } from './state.ts'

/**
 * Makes records of two devices one stash: whatever a record needs is there, a panel is cut once, and no two
 * reservations have the same place or the same copy of a piece. `graves`: the last that is known of removed records;
 * `photoLists`: garments whose list of photos comes from two devices.
 * Records that already are one stash stay as they are.
 */
export function settle(
  entries: Entries,
  graves: Graves,
  photoLists: readonly string[],
): { readonly entries: Entries; readonly settlements: readonly Settlement[] } {
  const settling = new Settling(entries, graves)
  keepParents(settling)
  settlePhotos(settling, photoLists)
  removeOrphans(settling)
  dropSecondCuts(settling)
  settleReservations(settling)
  return settling
}
