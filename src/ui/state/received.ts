import { openFile } from './opened-check.ts'
import { openBackupFile } from './yours-state.ts'

/*
 * Files that come from outside the app: shared to it by another app, or opened with it from the device's own list of
 * files. A shared file waits in a cache, where service-worker/share-target.ts, which has the same names, has put it.
 */
const CACHE = 'cutworth-shared'
const KEPT_AS = 'shared-file'

/** Every zip file begins with these letters, and no JSON does (PKWARE's APPNOTE.TXT 6.3.10, 4.3.7). */
const ZIP = 'PK'

/** Opens the file as what it is, a backup or a shared check, and gives the address of the screen that shows it. */
export async function receive(file: Blob): Promise<string> {
  const start = await file
    .slice(0, ZIP.length)
    .text()
    .catch(() => '')
  if (start !== ZIP) {
    void openFile(file)
    return '/open-check'
  }
  void openBackupFile(file)
  return '/settings/yours'
}

/** The file that was shared to the app last; null: none waits. It is given once. */
export async function takeSharedFile(): Promise<Blob | null> {
  // Without a secure context there are no caches, and nothing can be shared to the app.
  if (!('caches' in globalThis)) return null
  const cache = await caches.open(CACHE)
  const kept = await cache.match(KEPT_AS)
  await cache.delete(KEPT_AS)
  return kept ? kept.blob() : null
}
