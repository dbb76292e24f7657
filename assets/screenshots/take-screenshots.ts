import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, chromium, type Page } from 'playwright-core'
import { build, preview } from 'vite'
import { findChromium } from '../../src/terminal/bench/chromium.ts'
import {
  chooseSportsTop,
  measureTShirt,
  typeFigures,
  typeStretch,
  verdictSaid,
} from '../../tests/support/shop.ts'

/**
 * Takes the README's pictures from the built app, at phone size. Run with
 * `npx tsx assets/screenshots/take-screenshots.ts` after a change of the screens.
 */

/** Too small for the sports top in size S, but not for every size. */
const SMALL_T_SHIRT = ['48', '48', '60', '42', '22', '8', '19']

const folder = await mkdtemp(join(tmpdir(), 'cutworth-pictures-'))
await build({ build: { outDir: folder, emptyOutDir: true }, logLevel: 'warn' })
const server = await preview({ build: { outDir: folder }, preview: { port: 0 } })
const address = server.httpServer.address()
if (address === null || typeof address === 'string') throw new Error('the preview server has no port')
const app = `http://localhost:${address.port}/`
const executablePath = findChromium()
if (executablePath === null) throw new Error('No Chromium found: run `npm run pretest`.')
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })

await onPhone(browser, 'light', async (page) => {
  await chooseSportsTop(page)
  await take(page, 'garment')
  await page.getByRole('button', { name: 'T-shirt' }).tap()
  await page.getByLabel('Chest', { exact: true }).fill('54')
  await page.getByLabel('Length', { exact: true }).focus()
  await take(page, 'measures')
})
await onPhone(browser, 'light', async (page) => {
  await toVerdict(page)
  await take(page, 'verdict')
  await page.getByRole('link', { name: 'Flaws' }).tap()
  await page.locator('.flaw-editor').scrollIntoViewIfNeeded()
  await take(page, 'flaws')
})
await onPhone(browser, 'dark', async (page) => {
  await toVerdict(page)
  await take(page, 'verdict-dark')
})
await onPhone(browser, 'light', async (page) => {
  await chooseSportsTop(page)
  await page.getByRole('button', { name: 'T-shirt' }).tap()
  await page.getByLabel('Chest', { exact: true }).tap()
  await typeFigures(page, SMALL_T_SHIRT)
  await typeStretch(page, '55', '25')
  await page.getByRole('link', { name: /Open the verdict/ }).tap()
  await page.getByRole('heading', { name: 'What would save it' }).waitFor()
  await page.waitForTimeout(12_000)
  await page.getByRole('heading', { name: 'What would save it' }).scrollIntoViewIfNeeded()
  await take(page, 'remedies')
})
await onPhone(browser, 'light', async (page) => {
  await page.goto(`${app}#/stash`)
  await page.getByRole('button', { name: 'Put the demo things here' }).tap()
  await page.getByText('32 garments').waitFor()
  await take(page, 'stash')
  await page.getByRole('link', { name: 'Projects', exact: true }).tap()
  await take(page, 'projects')
  await page.getByRole('link', { name: /^Raglan top/ }).tap()
  await take(page, 'project')
  await page.getByRole('link', { name: 'At the table' }).tap()
  await take(page, 'at-the-table')
  await page.goto(`${app}#/projects`)
  await page.getByRole('link', { name: /^Half-circle skirt/ }).tap()
  await page
    .getByRole('link', { name: /Find cloth/ })
    .first()
    .tap()
  await page.waitForTimeout(6000)
  await take(page, 'donors')
  await page.goto(`${app}#/patterns`)
  await page.getByRole('button', { name: 'Type in a pattern' }).tap()
  await take(page, 'own-piece')
})

await browser.close()
await server.close()
await rm(folder, { recursive: true, force: true })

async function onPhone(by: Browser, theme: 'light' | 'dark', walk: (page: Page) => Promise<void>) {
  const context = await by.newContext({
    viewport: { width: 360, height: 640 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
    colorScheme: theme,
    reducedMotion: 'reduce',
    locale: 'en-GB',
  })
  const page = await context.newPage()
  await page.goto(app)
  await walk(page)
  await context.close()
}

/** A T-shirt with a stain, checked for the sports top. */
async function toVerdict(page: Page): Promise<void> {
  await chooseSportsTop(page)
  await measureTShirt(page)
  await typeStretch(page, '55', '25')
  await page.getByRole('link', { name: 'Flaws' }).tap()
  await page.locator('.flaw-editor').tap()
  await page.getByRole('link', { name: 'Verdict', exact: true }).tap()
  await verdictSaid(page, /Fits/)
  await page.waitForTimeout(500)
}

async function take(page: Page, name: string): Promise<void> {
  await page.waitForTimeout(500)
  await page.screenshot({ path: fileURLToPath(new URL(`./${name}.png`, import.meta.url)) })
}
