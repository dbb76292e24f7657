import { strToU8, zipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { describe, expect, inject, it } from 'vitest'
import { phonePage, whenKept } from '../support/phone.ts'

const square = (side: number) => [
  [0, 0],
  [side, 0],
  [side, side],
  [0, side],
]
const CHECK = JSON.stringify({
  format: 'cutworth-problem/1',
  name: 'Shared apron',
  panels: [{ id: 'front', outline: square(500) }],
  pieces: [{ id: 'pocket', outline: square(100) }],
})
const NO_BACKUP = zipSync({ 'letter.txt': strToU8('Dear Sir') })

/** As the device does it when another app shares: the file is posted to the address in the manifest, from elsewhere. */
async function share(page: Page, file: { name: string; mimeType: string; bytes: Uint8Array }): Promise<void> {
  await page.goto('about:blank')
  await page.setContent(`
    <form method="post" enctype="multipart/form-data" action="${inject('appUrl')}share">
      <input type="file" name="file" /><input type="hidden" name="text" value="" /><button>Share</button>
    </form>`)
  const { name, mimeType, bytes } = file
  await page.locator('input[type=file]').setInputFiles({ name, mimeType, buffer: Buffer.from(bytes) })
  await page.getByRole('button', { name: 'Share' }).tap()
}

describe('a file that another app shares', () => {
  it('opens as the check that it is, once', async () => {
    const { page, complaints } = await phonePage()
    await whenKept(page)
    await share(page, { name: 'apron.json', mimeType: 'application/json', bytes: strToU8(CHECK) })
    await page.getByText('Shared apron').waitFor()
    await page.getByText(/^Fits/).first().waitFor()
    expect(new URL(page.url()).hash).toBe('#/open-check')
    await page.goto(`${inject('appUrl')}#/received`)
    await page.reload()
    await page.getByText('A check that was shared from this app is a small file.').waitFor()
    expect(complaints).toEqual([])
  })

  it('opens as the backup that it is, or says what is wrong with it', async () => {
    const { page, complaints } = await phonePage()
    await whenKept(page)
    await share(page, { name: 'any.zip', mimeType: 'application/zip', bytes: NO_BACKUP })
    await page.getByText('it holds no “backup.json”', { exact: false }).waitFor()
    expect(new URL(page.url()).hash).toBe('#/settings/yours')
    expect(complaints).toEqual([])
  })

  it('says what is wrong when it is nothing of ours', async () => {
    const { page } = await phonePage()
    await whenKept(page)
    await share(page, { name: 'letter.txt', mimeType: 'text/plain', bytes: strToU8('Dear Sir') })
    await page.getByText('is not JSON', { exact: false }).waitFor()
  })
})

/** What the device does when a file is opened with the app: the browser's queue of launches has it. */
const launchedWith = (text: string, name: string) => `
  const getFile = async () => new File([${JSON.stringify(text)}], ${JSON.stringify(name)})
  const value = { setConsumer: (consumer) => consumer({ files: [{ getFile }] }) }
  Object.defineProperty(window, 'launchQueue', { value })`

describe('a file that is opened with the app', () => {
  it('is shown at once', async () => {
    const { page, complaints } = await phonePage({
      before: (opening) => opening.addInitScript(launchedWith(CHECK, 'apron.json')),
    })
    await page.getByText('Shared apron').waitFor()
    await page.getByText(/^Fits/).first().waitFor()
    expect(complaints).toEqual([])
  })

  it('is told to be damaged when it is, as a chosen one would', async () => {
    const { page } = await phonePage({
      before: (opening) => opening.addInitScript(launchedWith('PK and no more', 'backup.zip')),
    })
    await page.getByText('is not a zip file', { exact: false }).waitFor()
  })

  it('is nothing when the app is opened by itself', async () => {
    const { page, complaints } = await phonePage({
      before: (opening) =>
        opening.addInitScript(`
          const value = { setConsumer: (consumer) => consumer({ files: [] }) }
          Object.defineProperty(window, 'launchQueue', { value })`),
    })
    await page.getByRole('heading', { level: 1 }).waitFor()
    expect(new URL(page.url()).hash).not.toContain('open-check')
    expect(complaints).toEqual([])
  })
})

describe('the device', () => {
  it('colours its bars as the theme that she chose, whatever its own is', async () => {
    const { page } = await phonePage({ theme: 'light', at: '#/settings' })
    const colours = () =>
      page.evaluate(() => {
        const bars = [...document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')]
        return bars.filter(({ media }) => matchMedia(media).matches).map(({ content }) => content)
      })
    await expect.poll(colours).toEqual(['#f6f3ec'])
    await page.getByText('Dark', { exact: true }).tap()
    await expect.poll(colours).toEqual(['#1d211f'])
    await page.getByText('As the phone', { exact: true }).tap()
    await expect.poll(colours).toEqual(['#f6f3ec'])
  })

  it('is told how Safari puts an app on the home screen when it is a tablet that says it is a Mac', async () => {
    const safari =
      'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Safari/605.1.15'
    const { page } = await phonePage({
      at: '#/settings',
      before: (opening) =>
        opening.addInitScript(`
          Object.defineProperty(Navigator.prototype, 'userAgent', { get: () => ${JSON.stringify(safari)} })
          Object.defineProperty(Navigator.prototype, 'maxTouchPoints', { get: () => 5 })`),
    })
    await page.getByText('Add to Home Screen', { exact: false }).waitFor()
  })
})
