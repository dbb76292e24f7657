import type { Photo } from '../../core/stash/photo.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import type { Reading } from '../reading.ts'
import { writeRecords } from '../record-writing.ts'
import { type Removal, Removing } from '../removal.ts'
import type { Kept } from '../schema.ts'
import { readAll } from './collection.ts'

/** The facts of all photos, the last taken up first. */
export function readPhotos(store: Store<unknown>): Promise<Reading<Kept<Photo>>> {
  return readAll(store, 'photos')
}

/** The JPEG of a photo; null: there is none. */
export async function readPicture({ database }: Store<unknown>, id: string): Promise<Blob | null> {
  return (await orStorageError(database.get('pictures', id)))?.picture ?? null
}

/**
 * Stores a photo with its picture as the last of the garment's, all or nothing. False, and nothing stored, if there is
 * no such garment.
 */
export function addPhoto(
  store: Store<unknown>,
  garment: string,
  photo: Photo,
  picture: Blob,
): Promise<boolean> {
  return writeRecords(store, ['garments', 'photos', 'pictures'], async (writing) => {
    const now = await writing.get('garments', garment)
    if (!now) return false
    await writing.put('photos', photo)
    await writing.transaction.objectStore('pictures').put({ id: photo.id, picture })
    const others = now.photos.filter((id) => id !== photo.id)
    await writing.put('garments', { ...now, photos: [...others, photo.id] })
    return true
  })
}

/**
 * Removes a photo with its picture and takes it off the garment's list. Gives what was removed:
 * `addPhoto` takes it up again.
 */
export function removePhoto(store: Store<unknown>, garment: string, photo: string): Promise<Removal> {
  return writeRecords(store, ['garments', 'photos', 'pictures'], async (writing) => {
    const removing = new Removing(writing)
    await removing.removePhoto(photo)
    const now = await writing.get('garments', garment)
    if (now?.photos.includes(photo))
      await writing.put('garments', { ...now, photos: now.photos.filter((id) => id !== photo) })
    return removing.removal()
  })
}
