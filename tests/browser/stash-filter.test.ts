import { readdirSync, readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { addRemnant, beginProject, reserveOn } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'

/** The demo's garments, straight from their files. */
const DEMO = readdirSync('demo-data/garments').map((file) =>
  readFileSync(`demo-data/garments/${file}`, 'utf8'),
)
const holding = (text: RegExp) => DEMO.filter((file) => text.test(file)).length

const status = (page: Page) => page.getByRole('region', { name: 'Stash' }).getByRole('status')
const openFilter = (page: Page) => page.getByRole('button', { name: /^Filter/ }).tap()

async function putDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Put the demo things here' }).tap()
  await page.getByText(`${DEMO.length} garments`).waitFor()
}

describe('the filter of the stash', () => {
  it('shows what yields a piece, less what is reserved, and tells what is proved not to', async () => {
    const { page, complaints } = await phonePage({ at: '#/stash' })
    // A leg in M is 72 × 42 cm before its seams: two lie one above the other on a square metre with no room for more,
    // and none on a strip of 30 cm.
    await addRemnant(page, { name: 'Strip', width: '30', length: '200' })
    await addRemnant(page, { name: 'Square', width: '100', length: '100' })
    await page.getByRole('link', { name: 'Stash', exact: true }).tap()
    await openFilter(page)
    await page.getByLabel('Would yield').selectOption({ label: 'Boxer shorts' })
    await page.getByLabel('What of it').selectOption({ label: 'Leg, 2 of it' })
    await page.getByLabel('Size').selectOption('M')
    await page.getByRole('button', { name: 'Look at 2 garments' }).tap()
    await page.getByText('1 of 2 yield it. One cannot: that is proved.').waitFor()
    await expect.poll(() => page.getByRole('link', { name: /^Square/ }).count()).toBe(1)
    await expect.poll(() => page.getByRole('link', { name: /^Strip/ }).count()).toBe(0)

    await beginProject(page, 'Boxer shorts', 'M')
    await reserveOn(page, 'Square')
    await page.getByRole('link', { name: 'Stash', exact: true }).tap()
    await page.getByText('0 of 2 yield it. 2 cannot: that is proved.').waitFor()
    await openFilter(page)
    await page.getByRole('button', { name: 'Reset' }).tap()
    await page.getByRole('button', { name: 'Show 2 garments' }).tap()
    await page.getByRole('link', { name: /^Strip/ }).waitFor()
    expect(complaints).toEqual([])
  })

  it('counts every garment as a yes, a proved no, or neither', async () => {
    const { page } = await phonePage({ at: '#/stash' })
    await putDemo(page)
    await openFilter(page)
    await page.getByLabel('Would yield').selectOption({ label: 'Racer-back sports top' })
    await page.getByRole('button', { name: /^Look at/ }).tap()
    await expect.poll(() => status(page).textContent()).not.toContain('so far')
    const said = (await status(page).textContent()) ?? ''
    const cannot = said.includes('One cannot') ? 1 : Number(said.match(/(\d+) cannot/)?.[1] ?? 0)
    const [open] = await page.locator('summary').allTextContents()
    const unsure = open?.startsWith('One') ? 1 : Number.parseInt(open ?? '0', 10)
    const yields = Number.parseInt(said, 10)
    expect(yields).toBeGreaterThan(0)
    await expect
      .poll(() => page.getByRole('region', { name: 'Stash' }).getByRole('link').count())
      .toBe(yields)
    expect(yields + cannot + unsure).toBe(DEMO.length)
  })

  it('offers the colours, fibres and places that there are', async () => {
    const { page } = await phonePage({ at: '#/stash' })
    await putDemo(page)
    for (const [label, text, pattern] of [
      ['Fibre', 'linen', /"fibres": ".*linen/],
      ['Colour', 'navy', /"colour": ".*navy/],
      ['Place', 'box 1', /"place": "box 1"/],
    ] as const) {
      await openFilter(page)
      const count = holding(pattern)
      expect(count).toBeGreaterThan(0)
      await page.getByLabel(label, { exact: true }).selectOption({ label: `${text} (${count})` })
      await page.getByRole('button', { name: `Show ${count} garments` }).tap()
      await expect.poll(() => status(page).textContent()).toBe(`${count} of ${DEMO.length} garments`)
      await openFilter(page)
      await page.getByRole('button', { name: 'Reset' }).tap()
      await page.getByRole('button', { name: 'Close' }).tap()
    }
  })
})

describe.each(['light', 'dark'] as const)('the filter on a %s phone', (theme) => {
  it('has no accessibility fault, open or while it looks', async () => {
    const { page } = await phonePage({ theme, at: '#/stash' })
    await putDemo(page)
    await openFilter(page)
    await page.getByLabel('Would yield').selectOption({ label: 'Leggings' })
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: /^Look at/ }).tap()
    await expectNoAxeViolations(page)
  })
})
