import { signal } from '@preact/signals'
import { askToPersist } from '../../storage/persist.ts'

/** What the browser says of this app's room on the device. null: it does not say. */
export interface StorageFacts {
  /** Bytes in use, the app itself among them. */
  readonly used: number | null
  /** Bytes that it may still take. */
  readonly left: number | null
  /** True: it has promised not to clear it. */
  readonly kept: boolean
}

export const storageFacts = signal<StorageFacts>({ used: null, left: null, kept: false })

export async function readStorageFacts(): Promise<void> {
  const { storage } = navigator
  const [estimate, kept] = await Promise.all([
    storage?.estimate?.().catch(() => null) ?? null,
    storage?.persisted?.().catch(() => false) ?? false,
  ])
  const { usage = null, quota = null } = estimate ?? {}
  const left = usage === null || quota === null ? null : Math.max(0, quota - usage)
  storageFacts.value = { used: usage, left, kept }
}

/** Asks the browser to keep it; false: it gives no such promise. */
export async function askKept(): Promise<boolean> {
  const kept = await askToPersist().catch(() => false)
  await readStorageFacts()
  return kept
}
