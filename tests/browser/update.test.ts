import { appendFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, inject, it } from 'vitest'
import { phonePage, whenKept } from '../support/phone.ts'

const workerFile = () => join(inject('appFolder'), 'service-worker.js')
let original: string | null = null

/** Another byte is another version to the browser. */
function publishUpdate(): void {
  original ??= readFileSync(workerFile(), 'utf8')
  appendFileSync(workerFile(), '\n// The next version.')
}

afterEach(() => {
  if (original !== null) writeFileSync(workerFile(), original)
  original = null
})
/** Leaves a mark on the page that no reload survives. */
async function mark(page: Page): Promise<void> {
  await page.evaluate(() => {
    document.documentElement.dataset.mark = 'old'
  })
}

const isMarked = (page: Page) => page.evaluate(() => document.documentElement.dataset.mark === 'old')

/** Has the browser look for an update and waits until it lies ready. */
function findUpdate(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    await registration.update()
    while (!registration.waiting) await new Promise((done) => setTimeout(done, 20))
  })
}

describe('an update', () => {
  it('is offered, leaves the page alone, and takes over once it is taken', async () => {
    const { page, complaints } = await phonePage()
    await whenKept(page)
    await mark(page)
    publishUpdate()
    await findUpdate(page)
    const take = page.getByRole('button', { name: 'Use it now' })
    await take.waitFor()
    expect(await isMarked(page)).toBe(true)
    await Promise.all([page.waitForEvent('load'), take.tap()])
    await page.getByRole('heading', { level: 1 }).waitFor()
    expect(await isMarked(page)).toBe(false)
    expect(await page.evaluate(async () => (await navigator.serviceWorker.ready).waiting)).toBeNull()
    expect(complaints).toEqual([])
  })

  it('that is put off is not taken', async () => {
    const { page } = await phonePage()
    await whenKept(page)
    await mark(page)
    publishUpdate()
    await findUpdate(page)
    await page.getByRole('button', { name: 'Later' }).tap()
    await page.getByText('A newer Cutworth is ready.').waitFor({ state: 'detached' })
    expect(await page.evaluate(async () => (await navigator.serviceWorker.ready).waiting !== null)).toBe(true)
    expect(await isMarked(page)).toBe(true)
  })
})
