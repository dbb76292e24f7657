import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { phonePage } from '../support/phone.ts'
import { stored } from '../support/shop.ts'

const figure = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })
const lengths = async (page: Page) =>
  ((await stored(page, 'notions')) as { value: { lengths: number[] } }[])[0]?.value.lengths

/** An elastic of two lengths, one of them just removed. */
async function removeOne(page: Page): Promise<void> {
  await button(page, 'Add a notion').tap()
  await button(page, 'Elastic').tap()
  for (const length of ['200', '76']) {
    await figure(page, 'Another length').fill(length)
    await button(page, 'Add a length').tap()
  }
  await button(page, 'Remove 200 cm').tap()
  await button(page, 'Undo').waitFor()
}

describe('the offer to take a removal back', () => {
  it('stands below what is worked on, and can be put away by a button a thumb can hit', async () => {
    const { page } = await phonePage({ at: '#/notions', serviceWorkers: 'block' })
    await removeOne(page)
    const [main, bar] = await Promise.all([
      page.locator('main').boundingBox(),
      page.locator('.notice').boundingBox(),
    ])
    expect(main!.y + main!.height).toBeLessThanOrEqual(bar!.y + 0.5)
    const close = button(page, 'Close')
    const { width, height } = (await close.boundingBox())!
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(44)
    await close.tap()
    await expect.poll(() => button(page, 'Undo').count()).toBe(0)
    expect(await lengths(page)).toEqual([760])
  })

  it('goes with the next thing done elsewhere, and not with a look around', async () => {
    const { page } = await phonePage({ at: '#/notions', serviceWorkers: 'block' })
    await removeOne(page)
    await page.getByRole('heading', { name: 'Lengths you have' }).tap()
    await page.mouse.wheel(0, 200)
    await button(page, 'Undo').waitFor()
    await figure(page, 'Name').tap()
    await expect.poll(() => button(page, 'Undo').count()).toBe(0)
    expect(await lengths(page)).toEqual([760])
  })

  it('gives way to the next one', async () => {
    const { page } = await phonePage({ at: '#/notions', serviceWorkers: 'block' })
    await removeOne(page)
    await button(page, 'Remove 76 cm').tap()
    await page
      .getByText(/76 cm/)
      .filter({ hasText: /remove/i })
      .first()
      .waitFor()
    await button(page, 'Undo').tap()
    await expect.poll(() => lengths(page)).toEqual([760])
  })
})
