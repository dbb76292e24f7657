import type { Browser, Page } from 'playwright-core'
import { serveFolder } from './host.ts'
import { type Link, slowLink } from './slow-link.ts'

export interface OfflineFigure {
  readonly files: number
  /** Bytes over the link, headers not counted. */
  readonly bytes: number
  /** Milliseconds from the first opening until the first screen stood, … */
  readonly screen: number
  /** … until the app said that it works without network, … */
  readonly said: number
  /** … and whether it then did: opened anew with the network off. */
  readonly works: boolean
}

/** What is called 3G: 300 ms, 1.6 Mbit/s. */
export const MOBILE_3G: Link = { latencyMs: 300, bytesPerSecond: 200_000 }

const SAID = 'Works without network from now on.'
/** Of waiting for what never comes. */
const PATIENCE_MS = 180_000

/** How long the built app takes, on a phone that never saw it, until it works without network. */
export async function runOffline(folder: string, browser: Browser, link = MOBILE_3G): Promise<OfflineFigure> {
  const { before, send } = slowLink(link)
  const sent = { files: 0, bytes: 0 }
  const host = await serveFolder(folder, {
    before,
    send: (answer, body) => {
      sent.files += 1
      sent.bytes += body.length
      return send(answer, body)
    },
  })
  const context = await browser.newContext({ viewport: { width: 360, height: 640 }, isMobile: true })
  context.setDefaultTimeout(PATIENCE_MS)
  try {
    const page = await context.newPage()
    const start = performance.now()
    await page.goto(host.address, { waitUntil: 'commit' })
    const standing = firstScreen(page).then(() => performance.now() - start)
    await page.getByText(SAID).waitFor()
    const said = performance.now() - start
    const figure = { ...sent, screen: await standing, said }
    await context.setOffline(true)
    await page.reload()
    const works = await firstScreen(page).then(
      () => true,
      () => false,
    )
    return { ...figure, works }
  } finally {
    await context.close()
    await host.close()
  }
}

function firstScreen(page: Page): Promise<void> {
  return page.getByRole('heading', { level: 1 }).waitFor()
}

export function offlineRow({ files, bytes, screen, said, works }: OfflineFigure): string {
  const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`
  return `first visit over 300 ms and 1.6 Mbit/s: first screen after ${seconds(screen)}, works without network after ${seconds(said)}${works ? '' : ' (but does NOT)'}; ${files} answers, ${(bytes / 1000).toFixed(0)} kB`
}
