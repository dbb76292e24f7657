import { computed, effect, signal } from '@preact/signals'
import type { Garment } from '../../core/garments/garment.ts'
import { StorageHeld, StorageLost, StorageNewer } from '../../storage/errors.ts'
import { openStore, type Store } from '../../storage/open-store.ts'
import { readDraft, writeDraft } from '../../storage/stores/draft.ts'
import { keepGarment } from '../../storage/stores/garments.ts'
import { readSettings, writeSettings } from '../../storage/stores/settings.ts'
import { readUnfinished, type Unfinished, writeUnfinished } from '../../storage/stores/unfinished.ts'
import { askToKeep } from './ask-to-keep.ts'
import type { CheckDraft } from './check-draft.ts'
import { draft } from './check-state.ts'
import { draftGate } from './draft-gate.ts'
import { inTurn } from './in-turn.ts'
import { patternShelf } from './patterns-state.ts'
import { RECORD_GATES } from './record-gates.ts'
import { firstSettings, settings } from './settings-state.ts'
import { unfinished } from './unfinished.ts'

/** What the device refused last; null: everything is stored. */
export const storeTrouble = signal<unknown>(null)

/** True while what is stored cannot be read: an empty list says nothing then. */
export const storeUnread = computed(
  () => storeTrouble.value instanceof StorageNewer || storeTrouble.value instanceof StorageHeld,
)

let opening: Promise<Store<CheckDraft>> | null = null

/** The open store, for the other state files; opened once. */
export function theStore(): Promise<Store<CheckDraft>> {
  opening ??= open()
  return opening
}

async function open(): Promise<Store<CheckDraft>> {
  const store = await openStore({
    gates: { ...RECORD_GATES, draft: draftGate },
    onBlocked: () => (storeTrouble.value = new StorageHeld('an older tab holds on to the store')),
    onLost: () => (storeTrouble.value = new StorageLost('the connection was closed')),
  })
  if (storeTrouble.value instanceof StorageHeld) storeTrouble.value = null
  return store
}

/**
 * Brings back what was stored and from then on stores every change. Resolves when the signals hold what was
 * stored; if the device refuses, the app goes on without a store and `storeTrouble` says so.
 */
export async function startKeeping(language: string): Promise<void> {
  try {
    const store = await theStore()
    const [stored, kept, left] = await Promise.all([
      readSettings(store),
      readDraft(store),
      readUnfinished(store),
    ])
    settings.value = stored ?? firstSettings(language)
    if (kept.ok && kept.value) draft.value = kept.value
    unfinished.value = left
    await patternShelf.follow(store, storeTrouble)
    storeChanges(store)
  } catch (error) {
    storeTrouble.value = error
  }
}

/** Stores the garment just checked; the draft of it is gone from the store with the same stroke. */
export async function keepFromDraft(garment: Garment): Promise<void> {
  await keepGarment(await theStore(), garment)
  askToKeep(garment.id)
}

function storeChanges(store: Store<CheckDraft>): void {
  const keepDraft = inTurn((value: CheckDraft) => writeDraft(store, value), storeTrouble)
  const keepSettings = inTurn((value: typeof settings.value) => writeSettings(store, value), storeTrouble)
  const keepUnfinished = inTurn((value: Unfinished) => writeUnfinished(store, value), storeTrouble)
  const stored = unfinished.peek()
  effect(() => {
    if (unfinished.value !== stored) keepUnfinished(unfinished.value)
  })
  effect(() => keepDraft(draft.value))
  effect(() => keepSettings(settings.value))
}
