import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { inject, onTestFinished } from 'vitest'

/** Only to end a wait for what never comes: a busy machine is slow, not wrong. */
const PATIENCE_MS = 90_000

let connection: Promise<Browser> | null = null

/** The Chromium that all browser tests share; each test file has a connection of its own to it. */
function theBrowser(): Promise<Browser> {
  connection ??= chromium.connect(inject('browserAddress'))
  return connection
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
  /** `block`: the app is never kept for use without network. */
  readonly serviceWorkers?: 'allow' | 'block'
  /** The address of another host that serves the app. */
  readonly host?: string
  /** Done to the page before the app is opened in it. */
  readonly before?: (page: Page) => Promise<unknown>
}

/** A new small phone (360×640, touch) with the app open and nothing stored; put away when the test ends. */
export async function phonePage(options: PhoneOptions = {}): Promise<Phone> {
  const { theme = 'light', at = '', serviceWorkers = 'allow', host = inject('appUrl') } = options
  const context = await (await theBrowser()).newContext({
    viewport: { width: 360, height: 640 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
    colorScheme: theme,
    reducedMotion: 'reduce',
    locale: 'en-GB',
    serviceWorkers,
  })
  context.setDefaultTimeout(PATIENCE_MS)
  onTestFinished(() => context.close())
  const page = await context.newPage()
  await slowDown(page)
  await options.before?.(page)
  const complaints = listen(page)
  await page.goto(host + at)
  return { page, context, complaints }
}

/** With `SLOWED=6` the page's processor is so many times slower: no test may hang on the machine being quick. */
async function slowDown(page: Page): Promise<void> {
  const rate = Number(process.env.SLOWED ?? 1)
  if (rate === 1) return
  const session = await page.context().newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate })
}

function listen(page: Page): string[] {
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  return complaints
}

/** Resolves once the app is kept for use without network and its service worker is in charge of the page. */
export async function whenKept(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready)
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
}
