import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage, whenKept } from '../support/phone.ts'
import {
  chooseSportsTop,
  heading,
  measureTShirt,
  stored,
  T_SHIRT,
  typeFigures,
  typeStretch,
  verdictSaid,
} from '../support/shop.ts'

const next = (page: Page) => page.getByRole('link', { name: 'Next' })
const strip = (page: Page) => page.getByRole('link', { name: /Open the verdict/ })

/** Drags the blue line of the ruler down by so many dots. */
async function dragLine(page: Page, by: number): Promise<void> {
  const line = await page.getByRole('slider').boundingBox()
  if (!line) throw new Error('there is no line to drag')
  const x = line.x + line.width - 50
  await page.mouse.move(x, line.y + 20)
  await page.mouse.down()
  await page.mouse.move(x, line.y + 20 + by, { steps: 4 })
  await page.mouse.up()
}

describe('the check in the shop', () => {
  it('goes from choosing to keeping, loses nothing when the tab dies, and is still there without network', async () => {
    const { page, context, complaints } = await phonePage()
    await whenKept(page)
    await chooseSportsTop(page)
    await measureTShirt(page)
    await typeStretch(page, '55', '25')

    // The tab is killed; the network is gone.
    await context.setOffline(true)
    await page.reload()
    await heading(page, 'What is the cloth like?').waitFor()
    await expect.poll(() => page.getByLabel('Stretch across', { exact: true }).inputValue()).toBe('55')
    await page.getByRole('link', { name: 'Measures' }).tap()
    const figures = page.locator('input[data-figure]')
    await expect
      .poll(() => figures.evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value)))
      .toEqual(T_SHIRT)

    await page.getByRole('link', { name: 'Flaws' }).tap()
    await page.locator('.flaw-editor').tap()
    await page.getByRole('button', { name: 'Hole, Front', exact: true }).waitFor()
    await next(page).tap()
    await verdictSaid(page, /Fits.*to spare/)
    await page.getByRole('button', { name: /^Front: / }).waitFor()

    await page.getByRole('button', { name: 'Keep it' }).tap()
    await heading(page, 'Kept in your stash').waitFor()
    await page.getByLabel('What it cost', { exact: true }).fill('3,5')
    await page.getByRole('link', { name: 'Check another garment' }).tap()
    await heading(page, 'Is it worth cutting?').waitFor()
    const kept = {
      name: 'T-shirt',
      kind: 't-shirt',
      price: 3.5,
      measures: { chest: 540, 'body-length': 700 },
      cloth: { stretch: { across: 55, along: 25 } },
      flaws: [{ kind: 'hole', panel: 'front' }],
    }
    await expect.poll(() => stored(page, 'garments')).toMatchObject([{ value: kept }])
    await page.reload()
    await heading(page, 'Is it worth cutting?').waitFor()
    expect(await stored(page, 'garments')).toMatchObject([{ value: kept }])
    expect(complaints).toEqual([])
  })

  it('takes at most 12 taps and 7 typed figures from opening to the verdict on a known kind of garment', async () => {
    const { page } = await phonePage()
    await chooseSportsTop(page)
    await page.reload()
    let taps = 0
    const tap = async (name: RegExp) => {
      taps += 1
      await page.getByRole('button', { name }).or(page.getByRole('link', { name })).tap()
    }
    await tap(/^T-shirt$/)
    taps += 1
    await page.getByLabel('Chest', { exact: true }).tap()
    await typeFigures(page, T_SHIRT)
    await tap(/Measure on the screen/)
    for (const by of [90, 90]) {
      taps += 1
      await dragLine(page, by)
      await tap(/^It stretches/)
    }
    await tap(/Open the verdict/)
    await verdictSaid(page, /Fits/)
    expect(T_SHIRT.length).toBeLessThanOrEqual(7)
    expect(taps).toBeLessThanOrEqual(12)
  })

  it('says why not, and finds the size that does', async () => {
    const { page } = await phonePage()
    await chooseSportsTop(page)
    await measureTShirt(page)
    await typeStretch(page, '10', '25')
    await strip(page).tap()
    await verdictSaid(page, /Cannot.*needs cloth that stretches 45 % across/)
    await page.getByRole('link', { name: 'Cloth' }).tap()
    await typeStretch(page, '55', '25')
    await strip(page).tap()
    await page.getByRole('row', { name: /^XS/ }).getByRole('button', { name: /Fits/ }).first().waitFor()
  })

  it('begins the next garment in one tap, and brings back the one left behind', async () => {
    const { page } = await phonePage()
    await chooseSportsTop(page)
    await measureTShirt(page)
    await page.getByRole('link', { name: 'Verdict', exact: true }).tap()
    await page.getByRole('button', { name: 'Walk away' }).tap()
    await heading(page, 'Is it worth cutting?').waitFor()
    await page.getByRole('button', { name: 'Bring it back' }).tap()
    await page.getByRole('link', { name: 'Carry on' }).tap()
    await page.getByRole('link', { name: 'Measures' }).tap()
    await expect.poll(() => page.getByLabel('Chest', { exact: true }).inputValue()).toBe('54')
  })

  it('can be done with the keyboard alone, flaws and all', async () => {
    const { page } = await phonePage()
    await chooseSportsTop(page)
    await measureTShirt(page)
    await page.getByRole('link', { name: 'Flaws' }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Add by figures' }).focus()
    await page.keyboard.press('Enter')
    await page.getByLabel('From the left edge', { exact: true }).fill('12')
    await page.getByLabel('Size across', { exact: true }).fill('8')
    await expect
      .poll(() => stored(page, 'drafts'))
      .toMatchObject([{ flaws: [{ shape: { form: 'round', radius: 40 } }] }])
    await page.getByRole('button', { name: 'Remove Hole, Front' }).focus()
    await page.keyboard.press('Enter')
    await expect.poll(() => stored(page, 'drafts')).toMatchObject([{ flaws: [] }])
  })

  it('keeps the drawing and the field in view above the phone’s keyboard', async () => {
    const { page } = await phonePage()
    await chooseSportsTop(page)
    await page.getByRole('button', { name: 'T-shirt' }).tap()
    await page.getByLabel('Chest', { exact: true }).tap()
    await page.setViewportSize({ width: 360, height: 380 })
    for (const name of ['Chest', 'Hem', 'Length', 'Shoulders']) {
      const field = page.getByLabel(name, { exact: true })
      await expect.poll(() => field.evaluate((input) => input === document.activeElement)).toBe(true)
      const drawing = await page.getByRole('img', { name: new RegExp(`tape lies at: ${name}`) }).boundingBox()
      const box = await field.boundingBox()
      const foot = await page.locator('.screen-foot').boundingBox()
      if (!drawing || !box || !foot) throw new Error('something is not on the screen')
      expect(drawing.y).toBeGreaterThanOrEqual(0)
      expect(drawing.height).toBeGreaterThan(100)
      expect(box.y).toBeGreaterThanOrEqual(drawing.y + drawing.height)
      expect(box.y + box.height).toBeLessThanOrEqual(foot.y)
      await typeFigures(page, ['50'])
    }
  })
})

describe.each(['light', 'dark'] as const)(
  'on a %s phone, no screen of the check has an accessibility fault',
  (theme) => {
    it('from the start to the kept garment', async () => {
      const { page } = await phonePage({ theme })
      await page.getByRole('button', { name: /sports top/i }).waitFor()
      await expectNoAxeViolations(page)
      await page.getByRole('button', { name: /sports top/i }).tap()
      await expectNoAxeViolations(page)
      await page.getByRole('button', { name: 'Use this' }).tap()
      await expectNoAxeViolations(page)
      await page.getByRole('button', { name: 'T-shirt' }).tap()
      await page.getByLabel('Chest', { exact: true }).fill('2x')
      await page.getByLabel('Hem', { exact: true }).fill('2')
      await page.getByLabel('Length', { exact: true }).focus()
      await expectNoAxeViolations(page)
      await page.getByLabel('Size on its label').selectOption('L')
      await page.getByLabel('Chest', { exact: true }).fill('54')
      await page.getByLabel('Hem', { exact: true }).fill('54')
      await next(page).tap()
      await typeStretch(page, '55', '25')
      await expectNoAxeViolations(page)
      await page.getByRole('button', { name: 'Measure on the screen' }).tap()
      await page.getByRole('slider').waitFor()
      await expectNoAxeViolations(page)
      await page.getByRole('button', { name: /bank card/ }).tap()
      await heading2(page, 'How big is this screen?').waitFor()
      await expectNoAxeViolations(page)
      await page.keyboard.press('Escape')
      await heading2(page, 'How big is this screen?').waitFor({ state: 'detached' })
      await page.keyboard.press('Escape')
      await page.getByRole('slider').waitFor({ state: 'detached' })
      await next(page).tap()
      await page.locator('.flaw-editor').tap()
      await expectNoAxeViolations(page)
      await next(page).tap()
      await verdictSaid(page, /Fits/)
      await expectNoAxeViolations(page)
      await page.getByRole('button', { name: 'Keep it' }).tap()
      await heading(page, 'Kept in your stash').waitFor()
      await expectNoAxeViolations(page)
    })

    it('nor has the drawing of a shape of one’s own', async () => {
      const { page } = await phonePage({ theme })
      await chooseSportsTop(page)
      await page.getByRole('button', { name: 'Another shape' }).tap()
      await page.locator('.outline-editor').tap()
      await page.getByRole('button', { name: 'Add a corner' }).tap()
      await expectNoAxeViolations(page)
    })
  },
)

function heading2(page: Page, name: string) {
  return page.getByRole('heading', { level: 2, name })
}
