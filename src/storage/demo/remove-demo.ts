import { DEMO_STORES, isDemoId } from '../../core/records/demo.ts'
import type { Store } from '../open-store.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'
import { type Removal, Removing } from '../removal.ts'
import { GARMENT_STORES, removeGarmentIn } from '../stores/garments.ts'
import { removeProjectIn } from '../stores/projects.ts'

/**
 * Removes the demo in one transaction. Each garment and project goes as it would by itself: what she reserved on a demo
 * garment or cut from it goes with it, and a demo project gives her cloth free. Everything else of hers stays. Gives what
 * was removed, for `restore`.
 */
export function removeDemo(store: Store<unknown>): Promise<Removal> {
  return writeRecords(store, [...GARMENT_STORES, 'projects', 'notions'], async (writing) => {
    const removing = new Removing(writing)
    for (const id of await demoIds(writing, 'garments')) await removeGarmentIn(writing, removing, id)
    for (const id of await demoIds(writing, 'projects')) await removeProjectIn(writing, removing, id)
    for (const name of DEMO_STORES)
      for (const id of await demoIds(writing, name)) await removing.remove(name, id)
    return removing.removal()
  })
}

async function demoIds(
  { transaction }: RecordWriting,
  name: (typeof DEMO_STORES)[number],
): Promise<readonly string[]> {
  return (await transaction.objectStore(name).getAllKeys()).filter(isDemoId)
}
