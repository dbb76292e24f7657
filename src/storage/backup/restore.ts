import { RECORD_STORES } from '../../core/records/record.ts'
import { commonAfter } from '../../core/records/stamps.ts'
import type { Store } from '../open-store.ts'
import { ALL_SETTINGS, type Schema, THIS_DEVICE } from '../schema.ts'
import type { Settings } from '../stores/settings.ts'
import { transact } from '../transact.ts'
import { newDevice } from './device.ts'
import { ALL_STORES, type FromFile } from './everything.ts'

/** Of a file made by a newer app a key may be unknown here; nobody asks for it then. */
type DraftKey = Schema['drafts']['key']

/**
 * Puts what a file holds in the place of everything that is stored, all of it or nothing. What is true of this
 * device alone stays: its id, and the scale of its screen.
 */
export function restore(store: Store<unknown>, file: FromFile, makeId: () => string): Promise<void> {
  const { contents, pictures, settings, drafts } = file
  return transact(store, [...ALL_STORES], async (transaction) => {
    const device = (await transaction.objectStore('device').get(THIS_DEVICE)) ?? newDevice(makeId)
    const own = await transaction.objectStore('settings').get(ALL_SETTINGS)
    for (const name of ALL_STORES) await transaction.objectStore(name).clear()
    for (const name of RECORD_STORES)
      for (const record of contents.records[name]) await transaction.objectStore(name).put(record as never)
    for (const { store: name, record } of contents.unread)
      await transaction.objectStore(name).put(record as never)
    for (const removed of contents.removed) await transaction.objectStore('removed').put(removed)
    for (const picture of pictures) await transaction.objectStore('pictures').put(picture)
    const kept = settingsAfter(settings, own)
    if (kept) await transaction.objectStore('settings').put(kept, ALL_SETTINGS)
    for (const [key, draft] of Object.entries(drafts))
      await transaction.objectStore('drafts').put(draft, key as DraftKey)
    const common = commonAfter([], file)
    await transaction.objectStore('device').put({ ...device, common }, THIS_DEVICE)
  })
}

/** Settings pass their own gate when they are read. */
function settingsAfter(restored: unknown, own: Settings | undefined): Settings | undefined {
  if (restored === null || typeof restored !== 'object') return own
  return { ...(restored as Settings), dotsPerMm: own?.dotsPerMm ?? null }
}

/** Clears everything that is stored, all of it or nothing. */
export function wipe(store: Store<unknown>): Promise<void> {
  return transact(store, [...ALL_STORES], async (transaction) => {
    for (const name of ALL_STORES) await transaction.objectStore(name).clear()
  })
}
