import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { phonePage } from '../support/phone.ts'
import { heading, stored } from '../support/shop.ts'

const figure = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })

async function slowed(page: Page, rate: number): Promise<void> {
  const session = await page.context().newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate })
}

/** Two frames of the page: whatever follows a blur or a change of the view has had its turn. */
function twoFrames(page: Page): Promise<void> {
  return page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  )
}

describe('on a page six times slower', () => {
  it('every digit typed fast into figures stands there', async () => {
    const { page } = await phonePage({ at: '#/strips', serviceWorkers: 'block' })
    await page.getByText('Ruffle or band', { exact: true }).tap()
    await slowed(page, 6)
    const fields = [
      'Edge it is sewn to',
      'Flat length, of the finished',
      'Finished width',
      'Width of the cloth',
      'Length of the cloth',
    ]
    for (const typed of ['140', '7.5', '52,25', '118.75']) {
      const wanted: string[] = []
      for (const [k, name] of fields.entries()) {
        if ((await figure(page, name).count()) === 0) continue
        await figure(page, name).focus()
        for (const key of typed) {
          await page.keyboard.press(key)
          await page.waitForTimeout(k * 8)
        }
        wanted.push(name)
      }
      expect(wanted.length).toBeGreaterThan(3)
      await twoFrames(page)
      await page.waitForTimeout(200)
      for (const name of wanted)
        await expect.poll(() => figure(page, name).inputValue(), { message: name }).toBe(typed)
    }
  })
})

describe('with the keyboard up', () => {
  it('a button at the foot answers the first tap, though the keyboard goes as it is pressed', async () => {
    const { page } = await phonePage({ serviceWorkers: 'block' })
    await page.getByRole('button', { name: /sports top/i }).tap()
    await page.getByText('S', { exact: true }).tap()
    await page.getByRole('button', { name: 'Use this' }).tap()
    await page.getByRole('button', { name: 'T-shirt' }).tap()
    await figure(page, 'Chest').tap()
    await page.setViewportSize({ width: 360, height: 380 })
    await page.locator(':root[data-typing]').waitFor({ state: 'attached' })
    const next = page.locator('.screen-foot a').last()
    const place = (await next.boundingBox())!
    await page.mouse.move(place.x + place.width / 2, place.y + place.height - 8)
    await page.mouse.down()
    await twoFrames(page)
    await page.setViewportSize({ width: 360, height: 640 })
    await twoFrames(page)
    await page.mouse.up()
    await heading(page, 'What is the cloth like?').waitFor({ timeout: 20_000 })
    await expect.poll(() => page.locator(':root[data-typing]').count()).toBe(0)
  })

  it('a button under a figure answers too, though the fraction keys go as it is pressed', async () => {
    const { page } = await phonePage({ at: '#/settings', serviceWorkers: 'block' })
    await page.getByText('Inches', { exact: true }).tap()
    await page.goto(`${page.url().split('#')[0]}#/notions`)
    await button(page, 'Add a notion').tap()
    await button(page, 'Elastic').tap()
    await figure(page, 'Another length').tap()
    await page.keyboard.type('30')
    await button(page, '1/2').waitFor()
    await button(page, 'Add a length').scrollIntoViewIfNeeded()
    const place = (await button(page, 'Add a length').boundingBox())!
    await page.mouse.move(place.x + place.width / 2, place.y + place.height - 6)
    await page.mouse.down()
    await twoFrames(page)
    await page.mouse.up()
    await expect
      .poll(
        async () => ((await stored(page, 'notions')) as { value: { lengths: number[] } }[])[0]?.value.lengths,
        {
          timeout: 20_000,
        },
      )
      .toEqual([762])
  })
})

describe('what is typed and not yet added', () => {
  it('is there again after Back, and after a reload', async () => {
    const { page } = await phonePage({ at: '#/notions', serviceWorkers: 'block' })
    await button(page, 'Add a notion').tap()
    await button(page, 'Elastic').tap()
    await figure(page, 'Another length').fill('87,5')
    await page.getByRole('link', { name: 'Back' }).tap()
    await page.getByRole('link', { name: /^Elastic/ }).tap({ timeout: 20_000 })
    await expect.poll(() => figure(page, 'Another length').inputValue()).toBe('87,5')
    await expect.poll(async () => JSON.stringify(await stored(page, 'drafts'))).toContain('87,5')
    await page.reload()
    await expect.poll(() => figure(page, 'Another length').inputValue()).toBe('87,5')
    await button(page, 'Add a length').tap()
    await expect.poll(() => stored(page, 'notions')).toMatchObject([{ value: { lengths: [875] } }])
    await expect.poll(() => figure(page, 'Another length').inputValue()).toBe('')
  })
})
