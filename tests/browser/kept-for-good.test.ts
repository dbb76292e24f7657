import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { addRemnant } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'
import { heading } from '../support/shop.ts'

const REMNANT = { name: 'Mine', width: '50', length: '60' }

/** Stands in for a browser that has promised nothing, and counts how often it is asked to. */
function countAsking(): void {
  Object.assign(window, { asked: 0 })
  StorageManager.prototype.persisted = async () => false
  StorageManager.prototype.persist = async () => {
    Object.assign(window, { asked: Number(Reflect.get(window, 'asked')) + 1 })
    return false
  }
}

const timesAsked = (page: Page) => page.evaluate(() => Reflect.get(window, 'asked'))

describe('the browser', () => {
  it('is asked to keep what is stored when she first keeps something, not before', async () => {
    const { page } = await phonePage({ at: '#/stash' })
    await page.addInitScript(countAsking)
    await page.reload()
    await page.getByRole('button', { name: 'Put the demo things here' }).tap()
    await page.getByText('32 garments').waitFor()
    await expect.poll(() => timesAsked(page)).toBe(0)
    await addRemnant(page, REMNANT)
    await expect.poll(() => timesAsked(page)).toBe(1)
    await page.getByLabel('Place', { exact: true }).fill('box 1')
    await addRemnant(page, { ...REMNANT, name: 'Mine too' })
    await expect.poll(() => timesAsked(page)).toBe(1)
  })

  it('is quoted in the settings for the room that is left', async () => {
    const { page } = await phonePage({ at: '#/settings' })
    await page.getByText(/In use: .+\. Room left: .+B\./).waitFor()
  })
})

/** Makes all garments look as if they had been kept a month ago. */
async function ageGarments(): Promise<void> {
  await new Promise<void>((resolve, reject) => {
    const open = indexedDB.open('cutworth')
    open.onerror = () => reject(open.error)
    open.onsuccess = () => {
      const shelf = open.result.transaction('garments', 'readwrite').objectStore('garments')
      const all = shelf.getAll()
      all.onsuccess = () => {
        for (const kept of all.result) shelf.put({ ...kept, keptAt: kept.keptAt - 30 * 86_400_000 })
      }
      shelf.transaction.oncomplete = () => {
        open.result.close()
        resolve()
      }
    }
  })
}

describe.each(['light', 'dark'] as const)('the stash on a %s phone', (theme) => {
  it('reminds of a backup after some weeks, leads there, and can be told to wait', async () => {
    const { page } = await phonePage({ theme, at: '#/stash' })
    await addRemnant(page, REMNANT)
    await page.getByRole('link', { name: 'Stash', exact: true }).tap()
    const reminder = page.getByText('Never backed up.')
    await page.getByRole('link', { name: /^Mine/ }).waitFor()
    await expect.poll(() => reminder.count()).toBe(0)
    await page.evaluate(ageGarments)
    await page.reload()
    await reminder.waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('link', { name: 'Back up' }).tap()
    await heading(page, 'Yours').waitFor()
    await page.goBack()
    await page.getByRole('button', { name: 'Not now' }).tap()
    await reminder.waitFor({ state: 'detached' })
    await page.reload()
    await page.getByRole('link', { name: /^Mine/ }).waitFor()
    await expect.poll(() => reminder.count()).toBe(0)
  })
})
