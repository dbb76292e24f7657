import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage } from '../support/phone.ts'
import { heading, measureTShirt, typeStretch, verdictSaid } from '../support/shop.ts'

describe('what is worth keeping of a garment', () => {
  it.each(['light', 'dark'] as const)(
    'is ticked and framed, outlives a reload, and shows in the lay (%s)',
    async (theme) => {
      const { page, complaints } = await phonePage({ theme })
      await page.getByRole('button', { name: /raglan/i }).tap()
      await page.getByText('104', { exact: true }).tap()
      await page.getByRole('button', { name: 'Use this' }).tap()
      await page.getByRole('heading', { name: 'Out of which garment?' }).waitFor()
      await measureTShirt(page)
      await typeStretch(page, '60', '60')
      await page.getByRole('link', { name: 'Next' }).tap()
      await heading(page, 'Anything to avoid?').waitFor()

      const back = page.getByRole('checkbox', { name: 'Back', exact: true })
      await page.locator('label.tick').filter({ hasText: 'Back' }).tap()
      await page.getByRole('button', { name: 'Frame a print to show' }).tap()
      await page.getByLabel('Size across', { exact: true }).fill('6')
      await page.getByLabel('Size up and down', { exact: true }).fill('6')
      await page.reload()
      await expect.poll(() => back.isChecked()).toBe(true)
      await expect.poll(() => page.locator('.print').count()).toBe(1)
      await page.getByRole('button', { name: 'Print to show, Front' }).tap()
      await expect.poll(() => page.getByLabel('Size across', { exact: true }).inputValue()).toBe('6')
      await expectNoAxeViolations(page)

      await page.getByRole('link', { name: /Open the verdict/ }).tap()
      await verdictSaid(page, /Fits/)
      await page.getByText('Thick line: the garment’s own hem.').waitFor()
      await page.getByText('Dashed frame: the print to show.').waitFor()
      await expect.poll(() => page.locator('.panel-lay .print').count()).toBe(1)
      await expectNoAxeViolations(page)
      expect(complaints).toEqual([])
    },
  )
})
