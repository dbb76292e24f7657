import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { jpegMarkers, withExif } from '../support/exif.ts'
import { addRemnant } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'
import { addPhotos, redAndBlue } from '../support/pictures.ts'
import { stored } from '../support/shop.ts'

const RED = [255, 0, 0]
const BLUE = [0, 0, 255]

interface Kept {
  readonly id: string
  readonly bytes: readonly number[]
  readonly width: number
  readonly height: number
  /** Colours a tenth from the top and from the bottom, in the middle. */
  readonly top: readonly number[]
  readonly bottom: readonly number[]
}

/** The pictures in the store, decoded as their pixels lie in the file. */
function keptPictures(page: Page): Promise<Kept[]> {
  return page.evaluate(async () => {
    const open = indexedDB.open('cutworth')
    await new Promise((resolve) => {
      open.onsuccess = resolve
    })
    const all = open.result.transaction('pictures').objectStore('pictures').getAll()
    await new Promise((resolve) => {
      all.onsuccess = resolve
    })
    open.result.close()
    const read = async ({ id, picture }: { id: string; picture: Blob }) => {
      const image = await createImageBitmap(picture, { imageOrientation: 'none' })
      const { width, height } = image
      const context = new OffscreenCanvas(width, height).getContext('2d')
      if (!context) throw new Error('no canvas')
      context.drawImage(image, 0, 0)
      const colour = (share: number) =>
        [...context.getImageData(width / 2, Math.floor(height * share), 1, 1).data].slice(0, 3)
      const bytes = [...new Uint8Array(await picture.arrayBuffer())]
      return { id, bytes, width, height, top: colour(0.1), bottom: colour(0.9) }
    }
    return Promise.all((all.result as { id: string; picture: Blob }[]).map(read))
  })
}

function near(colour: readonly number[], wanted: readonly number[]): boolean {
  return colour.every((part, k) => Math.abs(part - (wanted[k] ?? 0)) < 40)
}

async function onARemnant(): Promise<Page> {
  const { page } = await phonePage()
  await addRemnant(page, { name: 'Striped linen', width: '60', length: '80' })
  return page
}

describe('a photo of a garment', () => {
  it('is kept upright, no larger than needed, and without where it was taken', async () => {
    const page = await onARemnant()
    const upright = await redAndBlue(page, 2000, 1000)
    // 6: the left edge of the file is the upper edge of what was seen (TIFF 6.0, Orientation).
    const taken = withExif(upright, 6)
    expect(jpegMarkers(upright)).not.toContain('FFE1')
    expect(jpegMarkers(taken)).toContain('FFE1')
    await addPhotos(page, taken)
    await page.getByRole('button', { name: 'Photo 1 of Striped linen' }).waitFor()

    const [kept, ...others] = await keptPictures(page)
    if (!kept) throw new Error('no picture is stored')
    expect(others).toEqual([])
    expect([kept.width, kept.height]).toEqual([640, 1280])
    expect(near(kept.top, RED)).toBe(true)
    expect(near(kept.bottom, BLUE)).toBe(true)
    const bytes = Uint8Array.from(kept.bytes)
    expect(jpegMarkers(bytes)).toEqual(expect.arrayContaining(['FFDB', 'FFDA']))
    expect(jpegMarkers(bytes)).not.toContain('FFE1')
    expect(Buffer.from(bytes).includes('Exif')).toBe(false)
    await expect
      .poll(() => stored(page, 'photos'))
      .toMatchObject([{ id: kept.id, value: { id: kept.id, width: 640, height: 1280 } }])
    await expect.poll(() => stored(page, 'garments')).toMatchObject([{ value: { photos: [kept.id] } }])
  })

  it('comes with others chosen at once, a small one as large as it was, and each can be removed and brought back', async () => {
    const page = await onARemnant()
    await addPhotos(page, await redAndBlue(page, 40, 30), await redAndBlue(page, 30, 40))
    const first = page.getByRole('button', { name: 'Photo 1 of Striped linen' })
    const second = page.getByRole('button', { name: 'Photo 2 of Striped linen' })
    await second.waitFor()
    const sizes = async () =>
      (await keptPictures(page)).map(({ width, height }) => `${width}×${height}`).sort()
    await expect.poll(() => sizes()).toEqual(['30×40', '40×30'])

    await first.tap()
    await page.getByRole('dialog', { name: 'Striped linen' }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Remove this photo' }).tap()
    await second.waitFor({ state: 'detached' })
    await expect.poll(sizes).toEqual(['30×40'])
    await page.getByRole('button', { name: 'Undo' }).tap()
    await second.waitFor()
    await expect.poll(sizes).toEqual(['30×40', '40×30'])
  })

  it('must be a picture', async () => {
    const page = await onARemnant()
    await addPhotos(page, Uint8Array.from(Buffer.from('a letter')))
    await page.getByText('This file is no picture that the browser can read.').waitFor()
    expect(await stored(page, 'photos')).toEqual([])
    expect(await stored(page, 'pictures')).toEqual([])
  })
})
