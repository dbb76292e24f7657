import type { IncomingMessage } from 'node:http'
import type { Page } from 'playwright-core'
import { describe, expect, inject, it, onTestFinished } from 'vitest'
import { type HostOptions, serveFolder } from '../../src/terminal/bench/browser/host.ts'
import { builtFiles } from '../support/built-files.ts'
import { phonePage, whenKept } from '../support/phone.ts'

/** More round trips than that, and the first visit to a shop ends before everything is here. */
const MOST_FILES = 40

/** So many at once show that they are not fetched one after another. Chromium itself holds a service worker to three. */
const SIDE_BY_SIDE = 2
/** A request that waits so long for company has none. */
const ALONE_MS = 20_000

const SAID = 'Works without network from now on.'

/** The built app on a host of the test's own. */
async function hostOf(options: HostOptions): Promise<string> {
  const host = await serveFolder(inject('appFolder'), options)
  onTestFinished(() => host.close())
  return host.address
}

/** Paths of the files that lie in the caches. */
function cachedFiles(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => {
    const opened = await Promise.all((await caches.keys()).map((name) => caches.open(name)))
    const requests = (await Promise.all(opened.map((cache) => cache.keys()))).flat()
    return requests.map(({ url }) => new URL(url).pathname)
  })
}

/** A door that is shut until it is opened. */
function door() {
  let open = () => {}
  const opened = new Promise<void>((resolve) => {
    open = resolve
  })
  return { opened, open }
}

function isOfWorker({ headers }: IncomingMessage): boolean {
  return headers.referer?.endsWith('/service-worker.js') ?? false
}

const said = (page: Page) => page.getByText(SAID)

describe('what is kept for use without network', () => {
  it(`is at most ${MOST_FILES} files`, async () => {
    const { page } = await phonePage()
    await whenKept(page)
    const files = await cachedFiles(page)
    expect(files.length).toBeGreaterThan(10)
    expect(files.length).toBeLessThanOrEqual(MOST_FILES)
  })

  it('is fetched side by side', async () => {
    const enough = door()
    let waiting = 0
    let isAlone = false
    // No file goes out to the service worker before some more are asked for, or until it is plain that none is.
    const host = await hostOf({
      before: async (_path, request) => {
        if (!isOfWorker(request)) return
        waiting += 1
        if (waiting >= SIDE_BY_SIDE) enough.open()
        const givesUp = setTimeout(() => {
          isAlone = true
          enough.open()
        }, ALONE_MS)
        await enough.opened
        clearTimeout(givesUp)
      },
    })
    const { page } = await phonePage({ host })
    await whenKept(page)
    expect(waiting).toBeGreaterThanOrEqual(SIDE_BY_SIDE)
    expect(isAlone).toBe(false)
  })
})

describe('that it works without network from now on', () => {
  it('is said when every file is here, and not before', async () => {
    const last = door()
    const host = await hostOf({
      before: async (path, request) => {
        if (isOfWorker(request) && path.startsWith('assets/demo')) await last.opened
      },
    })
    const { page, context } = await phonePage({ host })
    const files = builtFiles()
    // All but the one that the host holds back.
    await expect.poll(async () => (await cachedFiles(page)).length).toBe(files.length - 1)
    await expect.poll(() => said(page).count()).toBe(0)
    last.open()
    await said(page).waitFor()
    await context.setOffline(true)
    await page.goto(`${host}#/settings`)
    await page.reload()
    await page.getByText('Everything works without network.').waitFor()
  })

  it('is not said while a file is missing, and comes when the host is well again', async () => {
    let isIll = true
    const host = await hostOf({
      before: async (path, request) => {
        if (isIll && isOfWorker(request) && path.startsWith('assets/demo')) throw new Error('ill')
      },
    })
    const { page } = await phonePage({ host, at: '#/settings' })
    const notYet = page.getByText('Not everything is here yet')
    await notYet.waitFor()
    await expect
      .poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistration()) ?? null))
      .toBe(null)
    await expect.poll(() => said(page).count()).toBe(0)
    isIll = false
    await page.evaluate(() => dispatchEvent(new Event('online')))
    await said(page).waitFor()
    await expect.poll(() => notYet.count()).toBe(0)
  })

  it('is put away by hand, or by going on', async () => {
    const { page } = await phonePage()
    await said(page).waitFor()
    await page.getByRole('button', { name: 'Put this away' }).tap()
    await expect.poll(() => said(page).count()).toBe(0)
    const { page: other } = await phonePage()
    await said(other).waitFor()
    await other.getByRole('link', { name: 'Stash' }).tap()
    await expect.poll(() => said(other).count()).toBe(0)
  })

  it('is not said anew at later visits', async () => {
    const { page } = await phonePage()
    await said(page).waitFor()
    await page.reload()
    await page.getByRole('heading', { level: 1 }).waitFor()
    await whenKept(page)
    await expect.poll(() => said(page).count()).toBe(0)
  })
})
