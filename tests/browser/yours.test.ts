import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { chooseBackup as choose, savedBy } from '../support/backup-files.ts'
import { phonePage } from '../support/phone.ts'
import { stored } from '../support/shop.ts'

const JPEG = [0xff, 0xd8, 0xff, 0xe0, 0, 1, 2, 3]

/** Puts a garment with a photo into the store, as the app would. */
async function keepGarment(page: Page, id: string, name: string): Promise<void> {
  await page.evaluate(
    ({ id, name, bytes }) =>
      new Promise<void>((resolve, reject) => {
        const cloth = {
          structure: 'knit',
          surface: 'plain',
          pile: 'down',
          faces: 1,
          fibres: '=1+1',
          colour: 'blue',
        }
        const value = {
          id,
          name,
          kind: 't-shirt',
          labelSize: 'M',
          measures: { chest: 545 },
          traits: {},
          opening: 'cut',
          outline: null,
          cloth: { ...cloth, stretch: { across: 40, along: 20 } },
          role: null,
          flaws: [],
          price: 3.5,
          washed: true,
          note: '',
          gramsPerSquareMetre: null,
          place: 'Shelf',
          photos: [`photo-${id}`],
          boughtOn: null,
          usedUp: false,
        }
        const photo = { id: `photo-${id}`, width: 40, height: 30, takenAt: 5 }
        const picture = new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' })
        const open = indexedDB.open('cutworth')
        open.onerror = () => reject(open.error)
        open.onsuccess = () => {
          const transaction = open.result.transaction(['garments', 'photos', 'pictures'], 'readwrite')
          transaction.objectStore('garments').put({ id, value, keptAt: 5, changedAt: 5 })
          transaction.objectStore('photos').put({ id: photo.id, value: photo, keptAt: 5, changedAt: 5 })
          transaction.objectStore('pictures').put({ id: photo.id, picture })
          transaction.oncomplete = () => {
            open.result.close()
            resolve()
          }
          transaction.onerror = () => reject(transaction.error)
        }
      }),
    { id, name, bytes: JPEG },
  )
  await page.reload()
}

/** The same backup as another device would make it, with something changed. */
function changedCopy(bytes: Uint8Array): Uint8Array {
  const files = unzipSync(bytes)
  const document = JSON.parse(strFromU8(files['backup.json'] as Uint8Array))
  const [garment] = document.records.garments
  garment.value.name = 'Renamed tee'
  garment.changedAt += 1
  // As an app wrote it that kept no times of single fields.
  delete garment.unitsChangedAt
  document.records.garments.push({
    ...garment,
    id: 'g2',
    value: { ...garment.value, id: 'g2', name: 'New tee', photos: [] },
  })
  document.device = 'another'
  return zipSync({ ...files, 'backup.json': strToU8(JSON.stringify(document)) })
}

const names = async (page: Page) =>
  ((await stored(page, 'garments')) as { value: { name: string } }[]).map(({ value }) => value.name)

describe('everything she keeps', () => {
  it('is backed up, cleared, restored, and merged with a changed copy', async () => {
    const { page, complaints } = await phonePage({ at: '#/settings/yours' })
    await page.getByRole('heading', { name: 'Yours' }).waitFor()
    await keepGarment(page, 'g1', 'Striped tee')
    await page.getByText('No backup yet.').waitFor()
    const { name, bytes } = await savedBy(page, 'Back up')
    expect(name).toMatch(/^cutworth-backup-\d{4}-\d\d-\d\d\.zip$/)
    await page.getByText('The backup is in your downloads.').waitFor()
    await page.getByText(/Last backup: /).waitFor()

    await page.getByRole('button', { name: 'Clear everything' }).tap()
    await page.getByText(/This removes one garment and one photo/).waitFor()
    await page.getByRole('button', { name: 'Go on' }).tap()
    await page.getByRole('button', { name: 'Clear it all' }).tap()
    await page.getByText('Everything is cleared from this device.').waitFor()
    expect(await stored(page, 'garments')).toEqual([])
    expect(await stored(page, 'pictures')).toEqual([])

    await choose(page, bytes)
    await page.getByText('It holds one garment and one photo.').waitFor()
    await page.getByRole('button', { name: 'Replace everything here' }).tap()
    await page.getByRole('button', { name: 'Replace', exact: true }).tap()
    await page.getByText('Everything in the file is back.').waitFor()
    expect(await names(page)).toEqual(['Striped tee'])
    expect(await stored(page, 'pictures')).toHaveLength(1)

    await choose(page, changedCopy(bytes))
    await page.getByText('Comes: 1').tap()
    await page.getByText('Garment “New tee”', { exact: true }).waitFor()
    await page.getByText('Garment “Renamed tee”: name as it is in the file').waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Merge', exact: true }).tap()
    await page.getByText(/^Merged\./).waitFor()
    expect(await names(page)).toEqual(['Renamed tee', 'New tee'])

    await choose(page, changedCopy(bytes))
    await page.getByText('Everything in the file is here already.').waitFor()
    expect(complaints).toEqual([])
  })

  it('stays as it is when a file is not ours, and says why', async () => {
    const { page } = await phonePage({ at: '#/settings/yours' })
    await keepGarment(page, 'g1', 'Striped tee')
    await choose(page, strToU8('a letter'))
    await page.getByText('The file is not a zip file.').waitFor()
    await page.getByText('Nothing of it was used, and nothing here was changed.').waitFor()
    expect(await names(page)).toEqual(['Striped tee'])
    await expectNoAxeViolations(page)
  })

  it('is read in a worker of its own, so that no bomb holds up the page', async () => {
    const { page, complaints } = await phonePage({ at: '#/settings/yours' })
    await page.getByRole('heading', { name: 'Yours' }).waitFor()
    const started: string[] = []
    page.on('worker', (worker) => started.push(worker.url()))
    const json = new Uint8Array(20_000_000).fill(0x5b)
    await choose(page, zipSync({ 'backup.json': [json, { level: 9 }] }))
    await page.getByText(/that would grow larger than any backup’s/).waitFor()
    expect(started).toEqual([expect.stringContaining('backup.worker')])
    expect(complaints).toEqual([])
  })

  it('goes into a table for a spreadsheet', async () => {
    const { page } = await phonePage({ at: '#/settings/yours' })
    await keepGarment(page, 'g1', 'Tee; "striped"')
    await page.getByText('Comma: 36,5').tap()
    const { name, bytes } = await savedBy(page, 'Save the table')
    expect(name).toMatch(/^cutworth-stash-.*\.csv$/)
    const [titles, row] = new TextDecoder().decode(bytes).split('\r\n')
    expect(titles).toContain('Chest (cm)')
    expect(row).toContain('"Tee; ""striped""";T-shirt;M;Shelf;blue;\'=1+1;')
    expect(row).toMatch(/;54,5$/)
  })
})

describe.each(['light', 'dark'] as const)('Yours on a %s phone', (theme) => {
  it('has no accessibility fault, its questions neither', async () => {
    const { page } = await phonePage({ theme, at: '#/settings/yours' })
    await page.getByRole('heading', { name: 'Yours' }).waitFor()
    await keepGarment(page, 'g1', 'Striped tee')
    await page.getByText(/Room left/).waitFor()
    await expectNoAxeViolations(page)
    const { bytes } = await savedBy(page, 'Back up')
    await choose(page, changedCopy(bytes))
    await page.getByRole('button', { name: 'Replace everything here' }).tap()
    await page.getByText('Here now: one garment and one photo.').waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Close' }).tap()
    await page.getByRole('button', { name: 'Clear everything' }).tap()
    await page.getByRole('button', { name: 'Go on' }).tap()
    await page.getByText('Really clear it all?').waitFor()
    await expectNoAxeViolations(page)
  })
})
