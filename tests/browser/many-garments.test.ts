import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { storing } from '../../src/terminal/bench/browser/page-scripts.ts'
import { manyGarments } from '../../src/terminal/bench/browser/run-stash.ts'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage } from '../support/phone.ts'

const MANY = 1000
/** A screen's fill, and some on either side. */
const MOST_ROWS = 30

/** The stash of a phone with so many garments. */
async function manyOnPhone(count = MANY): Promise<Page> {
  const { page } = await phonePage({ serviceWorkers: 'block' })
  await page.getByRole('heading', { level: 1 }).waitFor()
  await page.evaluate(storing(manyGarments(count)))
  await page.reload()
  await page.getByRole('link', { name: 'Stash', exact: true }).tap()
  await page.getByText(`${count} garments`).waitFor()
  return page
}

const rows = (page: Page) => page.getByRole('region', { name: 'Stash' }).getByRole('listitem')

/** Which of how many each row says it is, in the order of the page. */
function places(page: Page): Promise<readonly (readonly [number, number])[]> {
  return rows(page).evaluateAll((all) =>
    all.map((row) => [Number(row.getAttribute('aria-posinset')), Number(row.getAttribute('aria-setsize'))]),
  )
}

const scrollTo = (page: Page, top: number) =>
  page.locator('.screen-scroll').evaluate((scroller, to) => {
    scroller.scrollTop = to
  }, top)

describe(`a stash of ${MANY} garments`, () => {
  it('is drawn as far as it is seen, wherever it is scrolled to, and each row says which it is', async () => {
    const page = await manyOnPhone()
    await expect.poll(async () => (await places(page))[0]).toEqual([1, MANY])
    for (const top of [3000, 40_000, 90_000, 400_000, 20_000]) {
      await scrollTo(page, top)
      await expect.poll(() => isFilled(page)).toBe(true)
      const shown = await places(page)
      expect(shown.length).toBeLessThanOrEqual(MOST_ROWS)
      const first = shown[0]?.[0] ?? 0
      expect(shown).toEqual(shown.map((_, k) => [first + k, MANY]))
    }
    await scrollTo(page, 1e9)
    await expect.poll(async () => (await places(page)).at(-1)).toEqual([MANY, MANY])
    await expectNoAxeViolations(page)
  })

  it('is walked through by the Tab key, row by row, and the row with the focus stays', async () => {
    const page = await manyOnPhone()
    await rows(page).first().getByRole('link').focus()
    for (let k = 2; k <= 20; k++) {
      await page.keyboard.press('Tab')
      await expect.poll(() => focusedRow(page)).toBe(k)
    }
    await scrollTo(page, 60_000)
    await expect.poll(async () => (await places(page)).at(-1)?.[0]).toBeGreaterThan(300)
    await expect.poll(() => focusedRow(page)).toBe(20)
  })

  it('comes to be in order of its free cloth, worked out beside the page', async () => {
    const page = await manyOnPhone(200)
    await page.getByLabel('Order').selectOption({ label: 'most free cloth' })
    await expect.poll(() => page.getByText('Still working out').count()).toBe(0)
    const areas = async () => {
      const texts = await rows(page)
        .getByText(/m² free/)
        .allTextContents()
      return texts.map((text) => Number.parseFloat(text))
    }
    await expect.poll(async () => (await areas()).length).toBeGreaterThan(5)
    await expect.poll(async () => (await areas())[0]).toBeGreaterThan(1)
    const shown = await areas()
    expect(shown).toEqual(shown.toSorted((a, b) => b - a))
  })

  it('is where it was left when she comes back from a garment', async () => {
    const page = await manyOnPhone()
    await scrollTo(page, 30_000)
    await expect.poll(() => isFilled(page)).toBe(true)
    const link = rows(page).nth(6).getByRole('link')
    const name = (await link.locator('.card-title').textContent()) ?? ''
    await link.tap()
    await page.getByRole('heading', { level: 1, name }).waitFor()
    await page.goBack()
    await page.getByText(name, { exact: true }).first().waitFor()
    await expect
      .poll(() => page.locator('.screen-scroll').evaluate(({ scrollTop }) => scrollTop > 25_000))
      .toBe(true)
  })
})

/** True if rows fill what is seen of the list, without a hole. */
function isFilled(page: Page): Promise<boolean> {
  return page.locator('.screen-scroll').evaluate((scroller) => {
    const { top, bottom } = scroller.getBoundingClientRect()
    const list = scroller.querySelector('.long-list')?.getBoundingClientRect()
    const boxes = [...scroller.querySelectorAll('.long-list > li')].map((row) => row.getBoundingClientRect())
    if (!list || boxes.length === 0) return false
    const from = Math.max(top, list.top)
    const to = Math.min(bottom, list.bottom)
    const isWhole = boxes.every((box, k) => k === 0 || Math.abs(box.top - (boxes[k - 1]?.bottom ?? 0)) < 1)
    return isWhole && (boxes[0]?.top ?? 0) <= from + 1 && (boxes.at(-1)?.bottom ?? 0) >= to - 1
  })
}

function focusedRow(page: Page): Promise<number> {
  return page.evaluate(() =>
    Number(document.activeElement?.closest('[aria-posinset]')?.getAttribute('aria-posinset')),
  )
}
