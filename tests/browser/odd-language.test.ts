import { describe, expect, it } from 'vitest'
import { phonePage } from '../support/phone.ts'

/** The app in a browser that tells this as its language. */
function phoneThatSays(language: string, at = '') {
  return phonePage({
    at,
    before: (page) =>
      page.addInitScript((told) => {
        Object.defineProperty(Navigator.prototype, 'language', { get: () => told })
        Object.defineProperty(Navigator.prototype, 'languages', { get: () => [told] })
      }, language),
  })
}

describe('a browser’s language', () => {
  it.each(['C', 'en_US', '', 'POSIX', 'en_US.UTF-8', 'x'])(
    'that is odd, %j, leaves no page blank',
    async (language) => {
      const { page, complaints } = await phoneThatSays(language, '#/stash/new-cloth')
      await page.getByLabel('Width', { exact: true }).fill('140,5')
      await page.getByLabel('Length', { exact: true }).fill('80')
      await page.getByRole('button', { name: 'Put it in the stash' }).tap()
      await page
        .getByText(/\d[.,]\d\d.(m|yd)² free/)
        .first()
        .waitFor()
      expect(complaints).toEqual([])
    },
  )

  it.each(['ar-EG', 'fa-IR', 'mr-IN'])(
    'with other digits, %s, leaves the app with one kind of them',
    async (language) => {
      const { page, complaints } = await phoneThatSays(language, '#/stash/new-cloth')
      await page.getByLabel('Width', { exact: true }).fill('١٤٠٫٥')
      await page.getByLabel('Length', { exact: true }).fill('۸۰')
      await page.getByRole('button', { name: 'Put it in the stash' }).tap()
      await page
        .getByText(/\d[.,]\d\d.(m|yd)² free/)
        .first()
        .waitFor()
      await expect.poll(() => page.locator('body').textContent()).not.toMatch(/[^\P{Nd}0-9]/u)
      await page.goto(page.url().replace(/#.*/, '#/settings'))
      await page.getByRole('heading', { name: 'Settings' }).waitFor()
      await expect.poll(() => page.locator('body').textContent()).not.toMatch(/[^\P{Nd}0-9]/u)
      expect(complaints).toEqual([])
    },
  )
})
