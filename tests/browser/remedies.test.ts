import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage } from '../support/phone.ts'
import { checkCloth, stored, typeStretch, verdictSaid } from '../support/shop.ts'

const saving = (page: Page) => page.getByRole('region', { name: 'What would save it' })
const row = (page: Page, name: RegExp) => saving(page).getByRole('button', { name })
const lay = (page: Page, name: RegExp) => page.getByRole('dialog', { name })

/** A small remnant for the pouch in its larger size: too little cloth by its area alone. */
const tooSmall = (page: Page) => checkCloth(page, /pouch/i, 'L', ['44', '48'])

describe('a check that cannot', () => {
  it('shows what would save it, each with its lay; one made in the check changes the verdict, and can be taken back', async () => {
    const { page, complaints } = await phonePage()
    await tooSmall(page)
    await verdictSaid(page, /Cannot/)
    await saving(page)
      .getByText(/ways? to save it$/)
      .waitFor()
    const smaller = row(page, /^Make size S\b/)
    await expect.poll(() => smaller.textContent()).toMatch(/Fits\. 2 sizes smaller than you chose/)

    await smaller.tap()
    await lay(page, /Make size/)
      .getByText(/\d (mm|cm) to spare/)
      .waitFor()
    await lay(page, /Make size/)
      .getByRole('button', { name: /^Cloth: / })
      .waitFor()
    await lay(page, /Make size/)
      .getByRole('button', { name: 'Use this' })
      .tap()
    await verdictSaid(page, /Fits.*to spare all round/)
    await expect.poll(() => saving(page).count()).toBe(0)
    await expect.poll(() => stored(page, 'drafts')).toMatchObject([{ size: 'S' }])
    // The new verdict is in view, and the keyboard stands there.
    const verdict = page.getByRole('region', { name: 'Verdict' })
    await expect.poll(async () => (await verdict.boundingBox())?.y).toBeGreaterThanOrEqual(0)
    const focused = verdict.or(page.getByRole('heading', { level: 1 })).and(page.locator(':focus'))
    await expect.poll(() => focused.count()).toBe(1)

    await page.getByRole('button', { name: 'Undo' }).tap()
    await verdictSaid(page, /Cannot/)
    await expect.poll(() => stored(page, 'drafts')).toMatchObject([{ size: 'L' }])
    expect(complaints).toEqual([])
  })

  it('does not offer to make a change that the check has no place for', async () => {
    const { page } = await phonePage()
    await checkCloth(page, /pouch/i, 'L', ['54', '59'])
    await saving(page).waitFor()
    await row(page, /two parts|wide instead/)
      .first()
      .tap()
    const sheet = page.getByRole('dialog')
    await sheet.getByRole('button', { name: /^Cloth: / }).waitFor()
    await expect.poll(() => sheet.getByRole('button', { name: 'Use this' }).count()).toBe(0)
    await page.keyboard.press('Escape')
    await sheet.waitFor({ state: 'detached' })
  })

  it('says how many things were tried when none of them is any help', async () => {
    const { page } = await phonePage()
    await checkCloth(page, /pouch/i, 'L', ['38', '42'])
    const said = await saving(page)
      .getByText(/^None of the \d+ things tried saves it\.$/)
      .textContent()
    const tried = Number(said?.match(/\d+/)?.[0])
    await saving(page).getByText(`Tried in vain: ${tried}`).tap()
    await expect.poll(() => saving(page).locator('details li').count()).toBe(tried)
  })

  it('stops looking when told to, keeps what it found, and looks again', async () => {
    const { page } = await phonePage()
    await checkCloth(page, /bucket/i, 'L', ['44', '48'])
    await saving(page)
      .getByText(/^Tried in vain: /)
      .waitFor()
    await saving(page).getByRole('button', { name: 'Stop looking' }).tap()
    await saving(page)
      .getByText(/^Stopped\./)
      .waitFor()
    await saving(page)
      .getByText(/^Tried in vain: [1-9]/)
      .waitFor()
    await saving(page).getByRole('button', { name: 'Look again' }).tap()
    await saving(page)
      .getByText(/^Looking/)
      .waitFor()
  })
})

describe('a band that a stretch woven gives too little for', () => {
  it('may be cut on the bias, if it gives enough there, which only a strip of it can tell', async () => {
    const { page } = await phonePage()
    await checkCloth(page, /raglan/i, '104', ['120', '120'])
    await page.getByRole('link', { name: 'Cloth', exact: true }).tap()
    await page.getByText('Weaving, stretchy', { exact: true }).tap()
    await typeStretch(page, '25', '0')
    await page.getByRole('link', { name: 'Verdict', exact: true }).tap()
    await verdictSaid(page, /Cannot/)
    const bias = row(page, /^Cut “Neckband” on the bias/)
    await expect
      .poll(() => bias.textContent())
      .toMatch(/Just fits\. Only if a strip cut on the bias gives 35 %.*pull one between two marks/)
    await bias.tap()
    const sheet = lay(page, /on the bias/)
    await sheet.getByText('Just fits', { exact: true }).waitFor()
    await sheet.getByText(/^Only if a strip/).waitFor()
    await expect.poll(() => sheet.getByRole('button', { name: 'Use this' }).count()).toBe(0)
  })
})

describe('a verdict that hangs on the tape', () => {
  it('names the measures that it hangs on, and leads to the field of each', async () => {
    const { page } = await phonePage()
    await checkCloth(page, /bib/i, '80', ['34', '60'])
    await verdictSaid(page, /only if your tape is right/)
    const again = page.getByRole('region', { name: 'Measure these again' })
    const width = again.getByRole('link', { name: /^Width/ })
    await expect.poll(() => width.textContent()).toMatch(/With 8 mm less/)
    await width.tap()
    const field = page.getByLabel('Width', { exact: true })
    await expect.poll(() => field.evaluate((input) => input === document.activeElement)).toBe(true)
    await page.keyboard.type('50')
    await page.getByRole('link', { name: 'Verdict', exact: true }).tap()
    await verdictSaid(page, /to spare all round/)
  })

  it('names, where it just does not fit, the one measure that would bring it', async () => {
    const { page } = await phonePage()
    await checkCloth(page, /bib/i, '80', ['33', '60'])
    await verdictSaid(page, /Cannot|No way/)
    const near = page.getByRole('region', { name: 'One measure may save it' })
    await expect
      .poll(() => near.getByRole('link', { name: /^Width/ }).textContent())
      .toMatch(/With 8 mm more it fits/)
  })
})

describe.each(['light', 'dark'] as const)('on a %s phone', (theme) => {
  it('remedies and their lays have no accessibility fault', async () => {
    const { page } = await phonePage({ theme })
    await tooSmall(page)
    await saving(page)
      .getByText(/ways? to save it$/)
      .waitFor()
    await saving(page)
      .getByText(/^Tried in vain/)
      .tap()
    await expectNoAxeViolations(page)
    await row(page, /^Make size/).tap()
    await page
      .getByRole('dialog')
      .getByText(/\d (mm|cm) to spare/)
      .waitFor()
    await expectNoAxeViolations(page)
  })

  it('nor have the measures to take again', async () => {
    const { page } = await phonePage({ theme })
    await checkCloth(page, /bib/i, '80', ['34', '60'])
    await page
      .getByRole('region', { name: 'Measure these again' })
      .getByRole('link', { name: /^Width/ })
      .waitFor()
    await expectNoAxeViolations(page)
  })
})
