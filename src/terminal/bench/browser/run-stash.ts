import type { Browser, Page } from 'playwright-core'
import { seededRandom } from '../../../core/base/random.ts'
import { type Garment, KIND_IDS } from '../../../core/garments/index.ts'
import { plausibleGarment } from '../plausible-garment.ts'
import { serveFolder } from './host.ts'
import { SCROLL_FAR, storing, TAKE_LONGEST, WATCH_TASKS } from './page-scripts.ts'

/** The longest task of the page's thread in each part of the visit, ms; 0: none was over 50 ms, which are not told. */
export interface StashFigure {
  readonly garments: number
  readonly slowed: number
  readonly longest: Readonly<Record<string, number>>
}

const KINDS = KIND_IDS.filter((id) => id !== 'free-outline')
const SLOWED = 4
/** How long the page is left alone after each action: what hangs on it must be over by then. */
const SETTLES_MS = 6000
const COLOURS = ['moss', 'rust red', 'navy', 'ecru', 'plum', 'grey and white']

/** A stash of so many garments on a slow phone: what she does there, and how long the page ever stood still. */
export async function runStash(folder: string, browser: Browser, garments: number): Promise<StashFigure> {
  const host = await serveFolder(folder)
  const context = await browser.newContext({
    viewport: { width: 360, height: 640 },
    isMobile: true,
    hasTouch: true,
    serviceWorkers: 'block',
    locale: 'en-GB',
  })
  try {
    const page = await context.newPage()
    context.setDefaultTimeout(120_000)
    await page.goto(host.address)
    await page.getByRole('heading', { level: 1 }).waitFor()
    await page.evaluate(storing(manyGarments(garments)))
    await page.reload()
    await page.getByRole('heading', { level: 1 }).waitFor()
    await page.evaluate(WATCH_TASKS)
    const devtools = await context.newCDPSession(page)
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWED })
    return { garments, slowed: SLOWED, longest: await visit(page, garments) }
  } finally {
    await context.close()
    await host.close()
  }
}

async function visit(page: Page, garments: number): Promise<Record<string, number>> {
  const longest: Record<string, number> = {}
  const during = async (part: string, work: () => Promise<unknown>) => {
    await work()
    await page.waitForTimeout(SETTLES_MS)
    longest[part] = await page.evaluate<number>(TAKE_LONGEST)
  }
  const order = (label: string) => () => page.getByLabel('Order').selectOption({ label })
  await during('open', async () => {
    await page.getByRole('link', { name: 'Stash', exact: true }).tap()
    await page.getByText(`${garments} garments`).waitFor()
  })
  await during('scroll', () => page.evaluate(SCROLL_FAR))
  await during('by name', order('by name'))
  await during('by free cloth', async () => {
    await order('most free cloth')()
    await page.waitForTimeout(SETTLES_MS)
  })
  await during('scroll again', () => page.evaluate(SCROLL_FAR))
  await during('by place', order('by place'))
  await during('search', () => page.getByLabel('Search').pressSequentially('moss tr', { delay: 120 }))
  await during('filter', async () => {
    await page.getByRole('button', { name: /^Filter/ }).tap()
    await page.getByRole('dialog').getByText('knit', { exact: true }).tap()
  })
  return longest
}

export function manyGarments(count: number): Garment[] {
  const random = seededRandom(1)
  return Array.from({ length: count }, (_, k) => {
    const garment = plausibleGarment(KINDS[k % KINDS.length] as (typeof KINDS)[number], random)
    const structure = (['knit', 'woven', 'unknown'] as const)[k % 3] ?? 'unknown'
    const colour = COLOURS[k % COLOURS.length] as string
    return {
      ...garment,
      id: `many-${k}`,
      name: `${colour} ${garment.kind} ${Math.floor(1000 * random())}`,
      place: `box ${k % 17}`,
      price: Math.round(1000 * random()) / 100,
      cloth: { ...garment.cloth, colour, structure },
    }
  })
}

export function stashRow({ garments, slowed, longest }: StashFigure): string {
  const told = Object.entries(longest).map(
    ([part, ms]) => `${part} ${ms === 0 ? 'under 50' : ms.toFixed(0)} ms`,
  )
  return `${garments} garments, Chromium ${slowed} times slower, longest task: ${told.join(', ')}`
}
