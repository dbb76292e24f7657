import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage } from '../support/phone.ts'
import { heading, stored } from '../support/shop.ts'

describe('settings', () => {
  it('take effect at once, and last', async () => {
    const { page, complaints } = await phonePage({ at: '#/settings' })
    await page.getByText('Inches', { exact: true }).tap()
    await page.getByText('Sixteenths', { exact: true }).tap()
    await page.getByText('Dark', { exact: true }).tap()
    await page.getByLabel('How far off may your tape be?').selectOption({ label: '1/4 in' })
    await page.getByLabel('Least gap between pieces').selectOption({ label: '1/8 in' })
    await expect
      .poll(() => stored(page, 'settings'))
      .toMatchObject([{ units: 'in', inchFraction: 16, theme: 'dark', tapeDoubt: 6.35, clearance: 3.175 }])
    await page.reload()
    await heading(page, 'Settings').waitFor()
    await expect.poll(() => page.evaluate(() => document.documentElement.dataset.theme)).toBe('dark')
    await expect.poll(() => page.getByLabel('Inches').isChecked()).toBe(true)
    await expect.poll(() => page.getByLabel('Sixteenths').isChecked()).toBe(true)
    await page.goto(`${page.url().split('#')[0]}#/patterns/leggings`)
    await page.getByText(/One square is 4 in/).waitFor()
    expect(complaints).toEqual([])
  })

  it('hold the screen’s true scale once a card was held to it', async () => {
    const { page } = await phonePage({ at: '#/settings' })
    await page.getByText(/A guess so far/).waitFor()
    await page.getByRole('button', { name: 'Check with a bank card' }).tap()
    await page.getByRole('button', { name: 'That is the card' }).tap()
    await page.getByText(/True to size/).waitFor()
  })

  it('show whose work the app uses', async () => {
    const { page } = await phonePage({ at: '#/settings' })
    await page.getByRole('button', { name: 'Licences of the parts it is made with' }).tap()
    await page
      .getByRole('dialog')
      .getByText(/preact/i)
      .waitFor()
  })
})

describe.each(['light', 'dark'] as const)('the Settings place on a %s phone', (theme) => {
  it('has no accessibility fault', async () => {
    const { page } = await phonePage({ theme, at: '#/settings' })
    await heading(page, 'Settings').waitFor()
    await page.getByText(/In use/).waitFor()
    await expectNoAxeViolations(page)
  })
})
