import { strToU8, unzipSync, zipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { chooseBackup, everythingStored, savedBy } from '../support/backup-files.ts'
import { addRemnant, beginProject, reserveOn } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'
import { addPhotos, redAndBlue } from '../support/pictures.ts'
import { heading } from '../support/shop.ts'

interface Stored {
  readonly id: string
  readonly value: Readonly<Record<string, unknown>>
}

const garmentsOf = async (page: Page) => (await everythingStored(page)).garments as readonly Stored[]

async function open(page: Page, place: string): Promise<void> {
  await page.goto(`${page.url().split('#')[0]}#${place}`)
}

async function addWithPhoto(page: Page, name: string): Promise<void> {
  await addRemnant(page, { name, width: '40', length: '40' })
  await addPhotos(page, await redAndBlue(page, 60, 40))
  await page.getByRole('button', { name: `Photo 1 of ${name}` }).waitFor()
}

/** One of most kinds of record, all made as she makes them: cloth with a photo, a notion, a project, a reservation. */
async function makeThings(page: Page): Promise<void> {
  await addWithPhoto(page, 'Grey twill')
  await open(page, '/notions')
  await page.getByRole('button', { name: 'Add a notion' }).tap()
  await page.getByRole('button', { name: 'Elastic' }).tap()
  await page.getByLabel('Name', { exact: true }).fill('Waist elastic')
  await page.getByRole('textbox', { name: 'Another length' }).fill('200')
  await page.getByRole('button', { name: 'Add a length' }).tap()
  await beginProject(page, 'Lined pouch', 'S')
  await reserveOn(page, 'Grey twill')
  for (const store of ['garments', 'notions', 'projects', 'reservations', 'photos', 'pictures'])
    await expect.poll(async () => (await everythingStored(page))[store]).toHaveLength(1)
}

async function backUp(page: Page): Promise<Uint8Array> {
  await open(page, '/settings/yours')
  const { bytes } = await savedBy(page, 'Back up')
  return bytes
}

async function restore(page: Page, file: Uint8Array): Promise<void> {
  await open(page, '/settings/yours')
  await chooseBackup(page, file)
  await page.getByRole('button', { name: 'Replace everything here' }).tap()
  await page.getByRole('button', { name: 'Replace', exact: true }).tap()
  await page.getByText('Everything in the file is back.').waitFor()
}

async function merge(page: Page, file: Uint8Array): Promise<void> {
  await open(page, '/settings/yours')
  await chooseBackup(page, file)
  await page.getByRole('button', { name: 'Merge', exact: true }).tap()
  await page.getByText(/^Merged\./).waitFor()
}

/** Types into a field of a garment's page, and waits for it to be stored. */
async function note(page: Page, garment: string, label: string, text: string): Promise<void> {
  await open(page, '/stash')
  await page.getByRole('link', { name: new RegExp(`^${garment}`) }).tap()
  await heading(page, garment).waitFor()
  await page.getByLabel(label, { exact: true }).fill(text)
  await expect.poll(async () => JSON.stringify(await garmentsOf(page))).toContain(JSON.stringify(text))
}

describe('what she made', () => {
  it('is after a backup, a clearing and a restore just what it was, to the last byte of a photo', async () => {
    const { page, complaints } = await phonePage()
    await makeThings(page)
    const before = await everythingStored(page)
    const file = await backUp(page)
    await page.getByRole('button', { name: 'Clear everything' }).tap()
    await page.getByRole('button', { name: 'Go on' }).tap()
    await page.getByRole('button', { name: 'Clear it all' }).tap()
    await page.getByText('Everything is cleared from this device.').waitFor()
    const cleared = await everythingStored(page)
    for (const store of ['garments', 'notions', 'projects', 'reservations', 'photos', 'pictures'])
      expect([store, cleared[store]]).toEqual([store, []])

    await restore(page, file)
    expect(await everythingStored(page)).toEqual(before)
    await open(page, '/stash')
    await page.getByRole('link', { name: /^Grey twill/ }).tap()
    await page.getByRole('button', { name: 'Photo 1 of Grey twill' }).waitFor()
    expect(complaints).toEqual([])
  })

  it('is the same on two phones once each has merged the other’s file, nothing lost and nothing doubled', async () => {
    const [{ page: here }, { page: there }] = [await phonePage(), await phonePage()]
    await makeThings(here)
    await restore(there, await backUp(here))
    expect(await garmentsOf(there)).toEqual(await garmentsOf(here))

    await note(here, 'Grey twill', 'Place', 'box of here')
    await note(there, 'Grey twill', 'Place', 'box of there')
    await addWithPhoto(here, 'Only here')
    await addWithPhoto(there, 'Only there')
    await open(there, '/notions')
    await there.getByRole('link', { name: /^Waist elastic/ }).tap()
    await there.getByRole('button', { name: 'Remove this notion' }).tap()
    await expect.poll(async () => (await everythingStored(there)).notions).toEqual([])

    const fromThere = await backUp(there)
    await open(here, '/settings/yours')
    await chooseBackup(here, fromThere)
    await here.getByText('Changed on both: 1').waitFor()
    await here.getByText('Garment “Grey twill”: place as it is in the file').waitFor()
    await here.getByText('Goes: 1').tap()
    await here.getByText('Notion “Waist elastic”', { exact: true }).waitFor()
    await merge(here, fromThere)

    const merged = await everythingStored(here)
    const garments = merged.garments as readonly Stored[]
    expect(garments.map(({ value }) => [value.name, value.place]).sort()).toEqual([
      ['Grey twill', 'box of there'],
      ['Only here', ''],
      ['Only there', ''],
    ])
    expect(merged.pictures).toHaveLength(3)
    expect(merged.reservations).toHaveLength(1)
    expect(merged.notions).toEqual([])

    // What came shows without the app being opened anew.
    await open(here, '/stash')
    await here.getByRole('link', { name: /^Only there/ }).tap()
    await here.locator('img').first().waitFor()

    await open(here, '/settings/yours')
    await chooseBackup(here, fromThere)
    await here.getByText('Everything in the file is here already.').waitFor()
    await merge(here, fromThere)
    expect(await everythingStored(here)).toEqual(merged)

    await merge(there, await backUp(here))
    expect(await everythingStored(there)).toEqual(merged)
  })

  it('stays as it is when a file is damaged, foreign or too new, and the file is refused with the reason', async () => {
    const { page } = await phonePage()
    await addWithPhoto(page, 'Grey twill')
    const file = await backUp(page)
    const before = await everythingStored(page)
    const files = unzipSync(file)
    const json = new TextDecoder().decode(files['backup.json'])
    const [photo] = Object.keys(files).filter((name) => name.startsWith('photos/'))
    const bad: readonly (readonly [string, Uint8Array])[] = [
      ['is damaged', flipped(file)],
      ['is cut off', file.subarray(0, file.length - 30)],
      ['it holds no “backup.json”', zipSync({ 'letter.txt': strToU8('hello') })],
      [
        'is not a backup of this app',
        zipSync({ 'backup.json': strToU8('{"format":"another","records":{}}') }),
      ],
      [
        'newer version',
        zipSync({ ...files, 'backup.json': strToU8(json.replace(/"version":\d+/, '"version":99')) }),
      ],
      ['is missing', zipSync({ 'backup.json': files['backup.json'] as Uint8Array })],
      [
        'chest',
        zipSync({
          ...files,
          'backup.json': strToU8(json.replace('"measures":{', '"measures":{"chest":"wide",')),
        }),
      ],
      ['is no JPEG', zipSync({ ...files, [photo ?? '']: strToU8('a letter in place of a picture') })],
    ]
    for (const [reason, bytes] of bad) {
      await chooseBackup(page, bytes)
      const refusal = page.getByRole('alert').filter({ hasText: reason })
      await refusal.getByText('Nothing of it was used, and nothing here was changed.').waitFor()
      await expect.poll(() => page.getByRole('button', { name: 'Merge', exact: true }).count()).toBe(0)
    }
    expect(await everythingStored(page)).toEqual(before)
    await chooseBackup(page, file)
    await page.getByText('Everything in the file is here already.').waitFor()
  })
})

/** With one bit of the deflated JSON turned over. */
function flipped(file: Uint8Array): Uint8Array {
  const bytes = Uint8Array.from(file)
  const at = 200
  bytes[at] = (bytes[at] ?? 0) ^ 1
  return bytes
}
