import type { Contents } from '../../core/records/record.ts'
import { stampsOf } from '../../core/records/stamps.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { type Device, THIS_DEVICE } from '../schema.ts'
import { transact } from '../transact.ts'

/** What this device knows of itself; null until its first backup. */
export async function readDevice({ database }: Store<unknown>): Promise<Device | null> {
  return (await orStorageError(database.get('device', THIS_DEVICE))) ?? null
}

/** The same; a device that is not known yet gets an id. `makeId` gives one that no other device has. */
export async function knownDevice(store: Store<unknown>, makeId: () => string): Promise<Device> {
  let device = newDevice(makeId)
  await transact(store, ['device'], async (transaction) => {
    const shelf = transaction.objectStore('device')
    device = (await shelf.get(THIS_DEVICE)) ?? device
    await shelf.put(device, THIS_DEVICE)
  })
  return device
}

export function newDevice(makeId: () => string): Device {
  return { id: makeId(), backedUpAt: null, common: [] }
}

/** Remembers that a backup with these contents has left the app. */
export function rememberBackup(store: Store<unknown>, contents: Contents, madeAt: number): Promise<void> {
  return transact(store, ['device'], async (transaction) => {
    const shelf = transaction.objectStore('device')
    const device = await shelf.get(THIS_DEVICE)
    if (!device) return
    const others = device.common.filter((state) => state.device !== device.id)
    const own = { device: device.id, at: madeAt, stamps: stampsOf(contents) }
    await shelf.put({ ...device, backedUpAt: madeAt, common: [...others, own] }, THIS_DEVICE)
  })
}
