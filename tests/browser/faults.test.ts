import { buffer } from 'node:stream/consumers'
import type { BrowserContext, Page } from 'playwright-core'
import { describe, expect, inject, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { addRemnant, beginProject, reserveOn } from '../support/home.ts'
import { crash, heldInMidWrite } from '../support/kill/hold-open.ts'
import { type Raw, readRaw } from '../support/kill/raw-store.ts'
import { phonePage } from '../support/phone.ts'
import { overlapArea, toJsts } from '../support/planar.ts'
import { heading } from '../support/shop.ts'

const TWILL = { name: 'Grey twill', width: '60', length: '60' }
const LAWN = { name: 'Rose lawn', width: '40', length: '50' }

async function rawOf(page: Page): Promise<Raw> {
  const [raw] = await readRaw(page, ['cutworth'])
  return raw!
}

const phone = (at: string) => phonePage({ at, serviceWorkers: 'block' })

/** Another tab of the same phone. */
async function newTab(context: BrowserContext, at: string): Promise<Page> {
  const page = await context.newPage()
  await page.goto(inject('appUrl') + at)
  return page
}

/** A tab of the same origin without the app: it only sees the store as it lies there. */
async function bareTab(context: BrowserContext): Promise<Page> {
  await context.route('**/bare.html', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Bare</title>' }),
  )
  return newTab(context, 'bare.html')
}

/** What the bar above every screen says. */
const news = (page: Page, said: RegExp) => page.locator('.notice').filter({ hasText: said })

describe('the tab killed in the middle of what she taps', () => {
  it('reserving or cutting has done nothing, and can be done again', async () => {
    const { page, context } = await phone('#/stash')
    await addRemnant(page, TWILL)
    await beginProject(page, 'Lined pouch', 'S')
    await page
      .getByRole('link', { name: /Find (other )?cloth/ })
      .first()
      .tap()
    await page
      .getByRole('link', { name: /^Grey twill.*yields/ })
      .first()
      .tap()
    const before = await rawOf(page)
    await heldInMidWrite(page, 4, () => page.getByRole('button', { name: 'Reserve this' }).tap())
    await crash(page)

    const second = await newTab(context, '#/projects')
    expect(await rawOf(second)).toEqual(before)
    await second.getByRole('link', { name: /^Lined pouch/ }).tap()
    await reserveOn(second, 'Grey twill')
    await second.getByRole('link', { name: 'At the table' }).tap()
    const sheet = second.getByRole('region', { name: /of Grey twill/ })
    await sheet.getByRole('checkbox').first().waitFor()
    for (const box of await sheet.getByRole('checkbox').all()) await box.check({ force: true })
    const cutButton = sheet.getByRole('button', { name: /pieces are cut/ })
    await cutButton.waitFor()
    const reserved = await rawOf(second)
    expect(reserved.reservations).toHaveLength(1)
    const table = second.url()
    await heldInMidWrite(second, 5, () => cutButton.tap())
    await crash(second)

    const third = await context.newPage()
    await third.goto(table)
    const again = third.getByRole('region', { name: /of Grey twill/ })
    await again.waitFor()
    const { reservations, cuts, offcuts } = await rawOf(third)
    expect(reservations).toEqual(reserved.reservations)
    expect([cuts, offcuts]).toEqual([[], []])
    await again.getByRole('button', { name: /pieces are cut/ }).tap()
    await again.waitFor({ state: 'detached' })
    expect((await rawOf(third)).cuts).toHaveLength(1)
  })
})

describe('two tabs that reserve the same cloth at the same moment', () => {
  it('are told apart: one has it, the other is told so', async () => {
    const { page, context } = await phone('#/stash')
    await addRemnant(page, TWILL)
    const projects: string[] = []
    for (let k = 0; k < 2; k++) {
      await beginProject(page, 'Lined pouch', 'S')
      projects.push(page.url())
    }
    const tabs = [page, await context.newPage()] as const
    for (const [k, tab] of tabs.entries()) {
      await tab.bringToFront()
      await tab.goto(projects[k]!)
      await tab
        .getByRole('link', { name: /Find (other )?cloth/ })
        .first()
        .tap()
      await tab
        .getByRole('link', { name: /^Grey twill.*yields/ })
        .first()
        .tap()
      await tab.getByRole('button', { name: 'Reserve this', disabled: false }).waitFor()
    }
    const at = Date.now() + 1000
    await Promise.all(
      tabs.map((tab) =>
        tab.getByRole('button', { name: 'Reserve this' }).evaluate(
          (button, when) =>
            new Promise<void>((done) =>
              setTimeout(() => {
                ;(button as HTMLButtonElement).click()
                done()
              }, when - Date.now()),
            ),
          at,
        ),
      ),
    )
    const told = tabs.map((tab) => tab.getByText(/^Somebody was quicker/))
    await Promise.race(told.map((one) => one.waitFor()))
    const { reservations } = await rawOf(page)
    expect(reservations).toHaveLength(1)
    const shown = await Promise.all(told.map((one) => one.count()))
    expect(shown.sort()).toEqual([0, 1])

    // The lay that the other is shown now lies beside, and can be had.
    const loser = tabs[(await told[0]!.count()) === 1 ? 0 : 1]!
    await loser.bringToFront()
    await expectNoAxeViolations(loser)
    await loser.getByRole('button', { name: 'Reserve this', disabled: false }).tap()
    await heading(loser, /Lined pouch/).waitFor()
    const shapes = (await rawOf(page)).reservations!.flatMap(({ value }) =>
      value.pieces.map(({ outline }) => toJsts(outline)),
    )
    shapes.forEach((shape, k) => {
      for (const other of shapes.slice(k + 1)) expect(overlapArea(shape, other)).toBeLessThan(0.5)
    })
    expect((await rawOf(page)).reservations).toHaveLength(2)
  })
})

describe('a device without room', () => {
  const QUOTA = 3_000_000

  /** Gives the origin so much room; without a figure, all there is. */
  async function setRoom(page: Page, bytes?: number): Promise<void> {
    const session = await page.context().newCDPSession(page)
    const { origin } = new URL(inject('appUrl'))
    const quota = bytes === undefined ? {} : { quotaSize: bytes }
    await session.send('Storage.overrideQuotaForOrigin', { origin, ...quota })
  }

  /** Fills the room that is left to the last. What cannot be made smaller is stored: random bytes. */
  const fill = (page: Page) =>
    page.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const open = indexedDB.open('filler', 1)
        open.onupgradeneeded = () => open.result.createObjectStore('bytes', { autoIncrement: true })
        open.onerror = () => reject(open.error)
        open.onsuccess = () => resolve(open.result)
      })
      const isStored = (size: number) =>
        new Promise<boolean>((resolve) => {
          const transaction = database.transaction('bytes', 'readwrite')
          transaction.objectStore('bytes').put(crypto.getRandomValues(new Uint8Array(size)))
          transaction.oncomplete = () => resolve(true)
          transaction.onabort = () => resolve(false)
        })
      for (const size of [60_000, 10_000, 1_000, 10]) while (await isStored(size));
    })

  /** A JPEG of random dots. */
  const jpeg = async (page: Page) =>
    Buffer.from(
      await page.evaluate(async () => {
        const canvas = new OffscreenCanvas(300, 400)
        const context = canvas.getContext('2d')!
        const dots = context.createImageData(300, 400)
        for (let k = 0; k < 300; k++) crypto.getRandomValues(dots.data.subarray(k * 1600, (k + 1) * 1600))
        context.putImageData(dots, 0, 0)
        const blob = await canvas.convertToBlob({ type: 'image/jpeg' })
        return [...new Uint8Array(await blob.arrayBuffer())]
      }),
    )

  /** Without loading the app anew: what waits to be stored is in its memory. */
  async function toYours(page: Page): Promise<void> {
    await page.evaluate(() => {
      location.hash = '/settings/yours'
    })
    await heading(page, 'Yours').waitFor()
  }

  async function backUp(page: Page): Promise<Buffer> {
    await toYours(page)
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Back up', exact: true }).tap(),
    ])
    return buffer(await download.createReadStream())
  }

  const noRoom = /No room is left/

  it('is told so, loses nothing, and takes what waits once there is room', async () => {
    const { page, context } = await phone('')
    const bare = await bareTab(context)
    await setRoom(bare, QUOTA)
    // A tab behind another is drawn once a second.
    await page.bringToFront()
    await page.reload()
    await addRemnant(page, TWILL)
    const backup = await backUp(page)
    await fill(bare)
    const before = await rawOf(bare)

    // Kept.
    await addRemnant(page, LAWN)
    await news(page, noRoom).waitFor()
    await expectNoAxeViolations(page)
    // A photo of it.
    const photo = { name: 'photo.jpg', mimeType: 'image/jpeg', buffer: await jpeg(bare) }
    await page.locator('input[type=file]').first().setInputFiles(photo)
    await news(page, noRoom).waitFor()
    expect(await rawOf(bare)).toEqual(before)

    // A backup put in the place of everything.
    await toYours(page)
    await page
      .getByLabel('Choose a backup file')
      .setInputFiles({ name: 'backup.zip', mimeType: 'application/zip', buffer: backup })
    await page.getByRole('button', { name: 'Replace everything here' }).tap()
    await page.getByRole('button', { name: 'Replace', exact: true }).tap()
    await page.getByText('There is no room left on this device. Nothing was changed.').waitFor()
    expect(await rawOf(bare)).toEqual(before)
    await page.getByRole('button', { name: 'Close' }).first().tap()

    await setRoom(bare)
    await page.getByRole('button', { name: 'Try again' }).tap()
    await news(page, noRoom).waitFor({ state: 'detached' })
    expect((await rawOf(bare)).garments).toHaveLength(2)
    await page.getByRole('link', { name: 'Stash', exact: true }).tap()
    await page.getByRole('link', { name: /^Rose lawn/ }).tap()
    await page.locator('input[type=file]').first().setInputFiles(photo)
    await page.getByRole('button', { name: 'Photo 1 of Rose lawn' }).waitFor()
    const { photos, pictures } = await rawOf(bare)
    expect([photos!.length, pictures!.length]).toEqual([1, 1])
  })
})

describe('a store that a newer app has changed', () => {
  /** Brings the store to a version that this app does not know; gives whether another tab stood in the way. */
  const toNewer = (page: Page) =>
    page.evaluate(
      () =>
        new Promise<boolean>((resolve, reject) => {
          const open = indexedDB.open('cutworth', 99)
          let blocked = false
          open.onblocked = () => {
            blocked = true
          }
          open.onupgradeneeded = () => {
            open.result.createObjectStore('future').put({ a: 1 }, 'b')
          }
          open.onerror = () => reject(open.error)
          open.onsuccess = () => {
            open.result.close()
            resolve(blocked)
          }
        }),
    )

  it('is left as it is by this one, which says so', async () => {
    const { page, context } = await phone('#/stash')
    await addRemnant(page, TWILL)
    const bare = await bareTab(context)
    await page.close()
    await toNewer(bare)
    const before = await rawOf(bare)
    expect(before.garments).toHaveLength(1)

    const old = await newTab(context, '#/stash')
    await news(old, /stored by a newer Cutworth/).waitFor()
    // Nobody knows what is there: the stash does not say that there is nothing.
    await old.getByText('cannot be read here now').waitFor()
    await expectNoAxeViolations(old)
    await addRemnant(old, LAWN)
    await news(old, /stored by a newer Cutworth/).waitFor()
    await old.getByRole('button', { name: 'Load anew' }).tap()
    await news(old, /stored by a newer Cutworth/).waitFor()
    expect(await rawOf(bare)).toEqual(before)
  })

  it('is given up at once by a tab that has it open, which says so', async () => {
    const { page, context } = await phone('#/stash')
    await addRemnant(page, TWILL)
    const bare = await bareTab(context)
    const { garments } = await rawOf(bare)
    expect(await toNewer(bare)).toBe(false)
    await page.bringToFront()
    await news(page, /can store nothing more/).waitFor()
    await expectNoAxeViolations(page)
    await page.getByLabel('Note', { exact: true }).fill('not stored')
    await news(page, /can store nothing more/).waitFor()
    expect((await rawOf(bare)).garments).toEqual(garments)
  })
})

describe('a store that a tab with an older app holds', () => {
  it('is waited for, which is said, and used once that tab is closed', async () => {
    const { page, context } = await phone('')
    const old = await bareTab(context)
    await page.close()
    await old.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          indexedDB.deleteDatabase('cutworth')
          const open = indexedDB.open('cutworth', 1)
          open.onupgradeneeded = () => {
            for (const name of ['garments', 'patterns'])
              open.result.createObjectStore(name, { keyPath: 'id' })
            for (const name of ['drafts', 'settings']) open.result.createObjectStore(name)
          }
          open.onerror = () => reject(open.error)
          // Never closed, and deaf to who asks for it.
          open.onsuccess = () => resolve()
        }),
    )
    const young = await newTab(context, '#/stash')
    await news(young, /open in another tab, in an older version/).waitFor()
    await expectNoAxeViolations(young)
    await old.close()
    await heading(young, 'Stash').waitFor()
    await news(young, /in another tab/).waitFor({ state: 'detached' })
    await addRemnant(young, TWILL)
    expect((await rawOf(young)).garments).toHaveLength(1)
  })
})
