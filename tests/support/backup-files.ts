import { buffer } from 'node:stream/consumers'
import type { Page } from 'playwright-core'

/** What a button saves, as bytes, with the file's name. */
export async function savedBy(
  page: Page,
  button: string | RegExp,
): Promise<{ name: string; bytes: Uint8Array }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).tap(),
  ])
  return {
    name: download.suggestedFilename(),
    bytes: new Uint8Array(await buffer(await download.createReadStream())),
  }
}

/** Where backups are made and opened: chooses this as the file. */
export async function chooseBackup(page: Page, bytes: Uint8Array): Promise<void> {
  await page
    .getByLabel('Choose a backup file')
    .setInputFiles({ name: 'backup.zip', mimeType: 'application/zip', buffer: Buffer.from(bytes) })
}

/** All that lies in the app's stores of her things, and her settings: by store, a picture as its bytes. */
export function everythingStored(page: Page): Promise<Readonly<Record<string, readonly unknown[]>>> {
  return page.evaluate(async () => {
    const stores = ['garments', 'patterns', 'projects', 'reservations', 'cuts', 'offcuts', 'notions']
    const others = ['photos', 'removed', 'pictures', 'settings']
    const open = indexedDB.open('cutworth')
    await new Promise((resolve) => {
      open.onsuccess = resolve
    })
    const reading = open.result.transaction([...stores, ...others])
    const everything = await Promise.all(
      [...stores, ...others].map(async (name) => {
        const all = reading.objectStore(name).getAll()
        await new Promise((resolve) => {
          all.onsuccess = resolve
        })
        return [name, all.result as unknown[]] as const
      }),
    )
    open.result.close()
    const told: Record<string, unknown[]> = {}
    for (const [name, records] of everything) told[name] = records
    told.pictures = await Promise.all(
      (told.pictures as { id: string; picture: Blob }[]).map(async ({ id, picture }) => ({
        id,
        bytes: [...new Uint8Array(await picture.arrayBuffer())].join(' '),
      })),
    )
    return told
  })
}
