import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { inject, onTestFinished } from 'vitest'
import { findChromium } from './find-chromium.ts'

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

let browser: Promise<Browser> | null = null

/** One Chromium a test file, started when the first page is asked for. */
function theBrowser(): Promise<Browser> {
  const executablePath = findChromium()
  if (executablePath === null) throw new Error('No Chromium found: run `npm run pretest`.')
  browser ??= chromium.launch({ executablePath, args: FLAGS })
  return browser
}

export interface Phone {
  readonly page: Page
  readonly context: BrowserContext
  /** Everything the page has complained about since it opened: console errors and uncaught exceptions. */
  readonly complaints: readonly string[]
}

export interface PhoneOptions {
  readonly theme?: 'light' | 'dark'
  /** Where to start, after the app's own address: `#/stash`. */
  readonly at?: string
}

/** A new small phone (360×640, touch) with the app open and nothing stored; put away when the test ends. */
export async function phonePage({ theme = 'light', at = '' }: PhoneOptions = {}): Promise<Phone> {
  const context = await (await theBrowser()).newContext({
    viewport: { width: 360, height: 640 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
    colorScheme: theme,
    reducedMotion: 'reduce',
    locale: 'en-GB',
  })
  onTestFinished(() => context.close())
  const page = await context.newPage()
  const complaints = listen(page)
  await page.goto(inject('appUrl') + at)
  return { page, context, complaints }
}

function listen(page: Page): string[] {
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  return complaints
}

/** For `afterAll` of every browser test file. */
export async function closeBrowser(): Promise<void> {
  await (await browser)?.close()
  browser = null
}
