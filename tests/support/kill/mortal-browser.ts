import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, type BrowserContext, chromium } from 'playwright-core'
import { findChromium } from '../../../src/terminal/bench/chromium.ts'

/** A Chromium whose store is on the disk, and whose processes can be killed as a phone does that needs the room. */
export interface MortalBrowser {
  context(): BrowserContext
  /** Kills the process of every tab, without a word to the page. */
  killTabs(): Promise<void>
  /** Kills the whole browser, and starts it again with what it had on the disk. */
  killBrowser(): Promise<void>
  close(): Promise<void>
}

const FLAGS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--remote-debugging-port=0',
  // A process kept ready for the next tab would be killed with the others, and the next tab be dead.
  '--disable-features=SpareRendererForSitePerProcess',
]

/** `prepare` is called for the browser's context whenever it has started. */
export async function mortalBrowser(
  prepare: (context: BrowserContext) => Promise<unknown>,
): Promise<MortalBrowser> {
  const profile = await mkdtemp(join(tmpdir(), 'cutworth-profile-'))
  let now = await start(profile)
  await prepare(now.context)
  return {
    context: () => now.context,
    async killTabs() {
      const tabs = now.context.pages().slice(1)
      const crashes = tabs.map((page) => page.waitForEvent('crash'))
      for (const id of await tabProcesses(now.browser)) if (!now.idle.has(id)) kill(id)
      await Promise.all(crashes)
      await Promise.all(tabs.map((page) => page.close()))
    },
    async killBrowser() {
      await end(now)
      now = await start(profile)
      await prepare(now.context)
    },
    async close() {
      await end(now)
      await rm(profile, { recursive: true, force: true, maxRetries: 5 })
    },
  }
}

interface Running {
  readonly process: ChildProcess
  readonly browser: Browser
  readonly context: BrowserContext
  /** Processes of the empty first tab, which keeps the browser open. */
  readonly idle: ReadonlySet<number>
}

async function start(profile: string): Promise<Running> {
  const path = findChromium()
  if (path === null) throw new Error('No Chromium found: run `npm run pretest`.')
  const child = spawn(path, [...FLAGS, `--user-data-dir=${profile}`, 'about:blank'], {
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const browser = await chromium.connectOverCDP(await addressOf(child))
  return { process: child, browser, context: browser.contexts()[0]!, idle: await tabProcesses(browser) }
}

async function tabProcesses(browser: Browser): Promise<ReadonlySet<number>> {
  const session = await browser.newBrowserCDPSession()
  const { processInfo } = await session.send('SystemInfo.getProcessInfo')
  await session.detach()
  return new Set(processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id))
}

/** Chromium says on its error output where it listens. */
function addressOf({ stderr }: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = ''
    stderr?.on('data', (data: Buffer) => {
      said += data
      const address = /DevTools listening on (ws:\S+)/.exec(said)?.[1]
      if (address) resolve(address)
    })
    stderr?.on('close', () => reject(new Error(`Chromium did not start: ${said}`)))
  })
}

async function end({ process: child, browser }: Running): Promise<void> {
  const gone = new Promise((resolve) => child.once('exit', resolve))
  child.kill('SIGKILL')
  await gone
  await browser.close()
}

/** It may have ended by itself meanwhile. */
function kill(id: number): void {
  try {
    process.kill(id, 'SIGKILL')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error
  }
}
