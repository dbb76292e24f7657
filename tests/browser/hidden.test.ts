import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { phonePage } from '../support/phone.ts'
import { checkCloth, verdictSaid } from '../support/shop.ts'

/** What the browser tells a page when another comes before it. */
function show(page: Page, state: 'hidden' | 'visible'): Promise<void> {
  return page.evaluate((now) => {
    Object.defineProperty(document, 'visibilityState', { value: now, configurable: true })
    document.dispatchEvent(new Event('visibilitychange'))
  }, state)
}

it('no worker searches while the page is hidden, and the search goes on when it is seen again', async () => {
  const { page, complaints } = await phonePage()
  await show(page, 'hidden')
  await checkCloth(page, /pouch/i, 'L', ['44', '48'])
  await verdictSaid(page, /Working it out/)
  await expect.poll(() => page.workers().length).toBe(0)
  await show(page, 'visible')
  await verdictSaid(page, /Cannot/)
  // What would save it is searched for now, midway in which she looks elsewhere.
  await show(page, 'hidden')
  await expect.poll(() => page.workers().length).toBe(0)
  await show(page, 'visible')
  await page
    .getByRole('region', { name: 'What would save it' })
    .getByText(/ways? to save it$/)
    .waitFor()
  expect(complaints).toEqual([])
})
