import { signal } from '@preact/signals'
import type { Garment } from '../../core/garments/index.ts'
import { isDemoId } from '../../core/records/demo.ts'
import { putGarment, readGarments, removeGarment } from '../../storage/stores/garments.ts'
import { DropShelf } from './drop-shelf.ts'
import { storeTrouble, theStore } from './keeper.ts'

const shelf = new DropShelf<Garment>({
  name: 'garments',
  read: readGarments,
  put: putGarment,
  remove: removeGarment,
})

/** Everything kept, the last kept first. */
export const garments = shelf.records
export const unreadableGarments = shelf.unreadable

/** False until `garments` holds what is stored. */
export const stashOpen = signal(false)

/** Reads the stash, once, and follows its changes. */
export async function openStash(): Promise<void> {
  try {
    await shelf.follow(await theStore(), storeTrouble)
  } catch (error) {
    storeTrouble.value = error
  }
  stashOpen.value = true
}

/** Resolves when every change of a garment made so far is stored, or refused. */
export function stashWritten(): Promise<void> {
  return shelf.written()
}

export function garmentById(id: string): Garment | null {
  return garments.value.find((garment) => garment.id === id) ?? null
}

/** Keeps a garment that no check was made of. */
export function addGarment(garment: Garment): void {
  shelf.put(garment)
}

/** Changes a kept garment, at every change; nothing happens if it is gone. */
export function changeGarment(id: string, part: Partial<Garment>): void {
  const now = garmentById(id)
  if (now) shelf.put({ ...now, ...part })
}

/** Removes a garment with all that hangs on it, and offers to take that back. */
export function dropGarment(garment: Garment, said: string): void {
  shelf.drop(garment, said)
}

export function isDemo({ id }: Pick<Garment, 'id'>): boolean {
  return isDemoId(id)
}
