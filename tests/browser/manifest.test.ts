import { describe, expect, inject, it } from 'vitest'
import { phonePage, whenKept } from '../support/phone.ts'

interface Icon {
  readonly src: string
  readonly sizes: string
  readonly purpose: string
}

describe('the web manifest', () => {
  it('is read by Chromium without an error', async () => {
    const { page, context } = await phonePage()
    const session = await context.newCDPSession(page)
    const { errors, url } = await session.send('Page.getAppManifest')
    expect(url).toBe(`${inject('appUrl')}manifest.webmanifest`)
    expect(errors).toEqual([])
  })

  it('makes the app installable', async () => {
    const { page, context } = await phonePage()
    await page.evaluate(() => navigator.serviceWorker.ready)
    const session = await context.newCDPSession(page)
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors')
    // A test's context is like a private window, where nothing can be installed; no other reason may stand.
    expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual(
      [],
    )
  })

  it('has no id, which another app of the same host could have too, and locks no orientation', async () => {
    const { page } = await phonePage()
    const manifest = await page.evaluate(() => fetch('manifest.webmanifest').then((answer) => answer.json()))
    expect(manifest).not.toHaveProperty('id')
    expect(manifest).not.toHaveProperty('orientation')
    expect(manifest.launch_handler.client_mode).toContain('navigate-existing')
  })

  it('names screenshots that exist in the sizes it gives, and are not kept for use without network', async () => {
    const { page } = await phonePage()
    await whenKept(page)
    const shots = await page.evaluate(async () => {
      const manifest = await fetch('manifest.webmanifest').then((answer) => answer.json())
      return Promise.all(
        (manifest.screenshots as Icon[]).map(async ({ src, sizes }) => {
          const image = new Image()
          image.src = src
          await image.decode()
          const kept = await caches.match(src, { ignoreSearch: true })
          return { sizes, real: `${image.naturalWidth}x${image.naturalHeight}`, kept: kept !== undefined }
        }),
      )
    })
    expect(shots.length).toBeGreaterThanOrEqual(3)
    for (const { sizes, real, kept } of shots) expect({ real, kept }).toEqual({ real: sizes, kept: false })
  })

  it('has shortcuts to screens that there are', async () => {
    const { page, complaints } = await phonePage()
    const urls: string[] = await page.evaluate(async () => {
      const { shortcuts } = await fetch('manifest.webmanifest').then((answer) => answer.json())
      return shortcuts.map(({ url }: { url: string }) => url)
    })
    for (const url of urls) {
      await page.goto(new URL(url, inject('appUrl')).href)
      await page.locator('main h1').waitFor()
      await expect
        .poll(() => page.locator('main h1').textContent())
        .not.toBe('There is nothing at this address.')
    }
    expect(urls).toHaveLength(3)
    expect(complaints).toEqual([])
  })

  it('names icons that exist in the sizes it gives', async () => {
    const { page } = await phonePage()
    const icons = await page.evaluate(async () => {
      const manifest = await fetch('manifest.webmanifest').then((answer) => answer.json())
      return Promise.all(
        (manifest.icons as Icon[]).map(async ({ src, sizes, purpose }) => {
          const image = new Image()
          image.src = src
          await image.decode()
          const real = sizes === 'any' ? 'any' : `${image.naturalWidth}x${image.naturalHeight}`
          return { sizes, real, purpose }
        }),
      )
    })
    for (const { sizes, real } of icons) expect(real).toBe(sizes)
    expect(icons.map(({ purpose, sizes }) => `${purpose} ${sizes}`)).toEqual(
      expect.arrayContaining(['any 192x192', 'any 512x512', 'maskable 512x512']),
    )
  })
})
