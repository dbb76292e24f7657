import { signal } from '@preact/signals'
import { addPhoto, readPicture, removePhoto } from '../../storage/stores/photos.ts'
import { shrinkPhoto } from '../photos/shrink-photo.ts'
import { storeTrouble, theStore } from './keeper.ts'
import { newId } from './new-id.ts'
import { stashWritten } from './stash-state.ts'
import { offerUndo } from './undo.ts'

/** Addresses of pictures read so far, by photo; null: there is none. They last as long as the page. */
const pictures = signal<ReadonlyMap<string, string | null>>(new Map())
const asked = new Set<string>()

/** The address of a photo's picture; null while it is being read, or when there is none. Reads a signal, so it follows. */
export function pictureOf(photo: string): string | null {
  if (!asked.has(photo)) {
    asked.add(photo)
    void read(photo)
  }
  return pictures.value.get(photo) ?? null
}

async function read(photo: string): Promise<void> {
  try {
    const picture = await readPicture(await theStore(), photo)
    show(photo, picture && URL.createObjectURL(picture))
  } catch (error) {
    storeTrouble.value = error
  }
}

function show(photo: string, address: string | null): void {
  pictures.value = new Map(pictures.value).set(photo, address)
}

/** Keeps a photo of the garment. False when the file is no picture; what the device refuses stands in `storeTrouble`. */
export async function keepPhoto(garment: string, file: Blob): Promise<boolean> {
  const shrunk = await shrinkPhoto(file).catch(() => null)
  if (!shrunk) return false
  const { picture, width, height } = shrunk
  const photo = { id: newId(), width, height, takenAt: Date.now() }
  await attempt(async () => {
    await stashWritten()
    await addPhoto(await theStore(), garment, photo, picture)
  })
  return true
}

/** Takes a photo away, and offers to bring it back. */
export async function dropPhoto(garment: string, photo: string, said: string): Promise<void> {
  await attempt(async () => {
    const store = await theStore()
    const picture = await readPicture(store, photo)
    const { records } = await removePhoto(store, garment, photo)
    const facts = records.find((record) => record.store === 'photos')?.kept.value
    if (!picture || !facts || !('takenAt' in facts)) return
    offerUndo(said, () => void attempt(() => addPhoto(store, garment, facts, picture)))
  })
}

async function attempt(work: () => Promise<unknown>): Promise<void> {
  try {
    await work()
    storeTrouble.value = null
  } catch (error) {
    storeTrouble.value = error
  }
}
