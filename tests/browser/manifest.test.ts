import { describe, expect, inject, it } from 'vitest'
import { phonePage } from '../support/phone.ts'

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
