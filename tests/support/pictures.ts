import type { Page } from 'playwright-core'

/** A JPEG, red on its left half and blue on its right, as a camera without any notes would save it. */
export async function redAndBlue(page: Page, width: number, height: number): Promise<Uint8Array> {
  const bytes = await page.evaluate(
    async ({ width, height }) => {
      const canvas = new OffscreenCanvas(width, height)
      const context = canvas.getContext('2d')
      if (!context) throw new Error('no canvas')
      context.fillStyle = 'rgb(255 0 0)'
      context.fillRect(0, 0, width / 2, height)
      context.fillStyle = 'rgb(0 0 255)'
      context.fillRect(width / 2, 0, width / 2, height)
      const jpeg = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 })
      return [...new Uint8Array(await jpeg.arrayBuffer())]
    },
    { width, height },
  )
  return Uint8Array.from(bytes)
}

/** On a garment's page: chooses these files as its photos, all at once. */
export async function addPhotos(page: Page, ...files: readonly Uint8Array[]): Promise<void> {
  await page
    .getByLabel('Add a photo')
    .setInputFiles(
      files.map((bytes, k) => ({ name: `${k}.jpg`, mimeType: 'image/jpeg', buffer: Buffer.from(bytes) })),
    )
}
