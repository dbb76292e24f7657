import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage, whenKept } from '../support/phone.ts'
import { heading, stored, verdictSaid } from '../support/shop.ts'

const figure = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const done = (page: Page) => page.getByRole('link', { name: 'Done' }).tap()

interface Typed {
  readonly shape: string
  readonly name: string
  readonly figures: Readonly<Record<string, string>>
}

/** Types a piece in and goes back to the pattern. */
async function typePiece(page: Page, { shape, name, figures }: Typed): Promise<void> {
  await page.getByRole('button', { name: shape }).tap()
  await figure(page, 'Name').fill(name)
  for (const [label, value] of Object.entries(figures)) await figure(page, label).fill(value)
  await done(page)
}

async function beginPattern(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Type in a pattern' }).tap()
  await figure(page, 'Name').fill(name)
}

const SIDE: Typed = { shape: 'Rectangle', name: 'Side', figures: { Width: '24', Height: '18' } }
const FLAP: Typed = { shape: 'Half moon', name: 'Flap', figures: { Width: '24', Height: '10' } }

/** A bag of two pieces in two sizes. */
async function typeBag(page: Page): Promise<void> {
  await beginPattern(page, 'Bag of scraps')
  await typePiece(page, SIDE)
  await page.getByRole('button', { name: 'Add a piece' }).tap()
  await typePiece(page, FLAP)
  await page.getByRole('button', { name: 'Add a size' }).tap()
  await figure(page, 'Name of the new size').fill('L')
  await figure(page, 'And what is the first size called?').fill('S')
  await figure(page, 'Each piece wider by').fill('4')
  await figure(page, 'Each piece taller by').fill('2')
  await page.getByRole('dialog').getByRole('button', { name: 'Add a size' }).tap()
  await page.getByRole('button', { name: 'L', exact: true }).waitFor()
}

describe('a pattern of her own', () => {
  it('says of a band that it may be cut on the bias too, where its grain is not that already', async () => {
    const { page } = await phonePage({ at: '#/patterns' })
    await beginPattern(page, 'Top')
    await page.getByRole('button', { name: 'Band or ruffle' }).tap()
    const bias = page.getByRole('checkbox', { name: /cut on the bias instead/ })
    const label = page.locator('label', { has: bias })
    await label.tap()
    await expect
      .poll(() => stored(page, 'patterns'))
      .toMatchObject([{ value: { pieces: [{ biasToo: true }] } }])
    expect((await label.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    await page.getByLabel('Grain', { exact: true }).selectOption('bias')
    await expect.poll(() => bias.count()).toBe(0)
  })

  it('is typed in with two pieces in two sizes, outlives a reload without network, and is checked against a garment', async () => {
    const { page, context, complaints } = await phonePage({ at: '#/patterns' })
    await whenKept(page)
    await typeBag(page)
    await expect
      .poll(() => stored(page, 'patterns'))
      .toMatchObject([
        {
          value: {
            name: 'Bag of scraps',
            sizes: ['S', 'L'],
            pieces: [
              { name: 'Side', shapes: { S: { width: 240, height: 180 }, L: { width: 280, height: 200 } } },
              { name: 'Flap', shapes: { S: { width: 240, height: 100 }, L: { width: 280, height: 120 } } },
            ],
          },
        },
      ])

    await context.setOffline(true)
    await page.reload()
    await heading(page, 'Your pattern').waitFor()
    await done(page)
    await heading(page, 'Bag of scraps').waitFor()
    await page.getByRole('img', { name: 'The pieces, all to one scale' }).waitFor()

    await page.getByText('S', { exact: true }).tap()
    await page.getByRole('button', { name: 'Check a garment for this' }).tap()
    await page.getByRole('button', { name: 'Remnant or cloth' }).tap()
    await figure(page, 'Width').fill('60')
    await figure(page, 'Length').fill('60')
    await page.getByRole('link', { name: /Open the verdict/ }).tap()
    await verdictSaid(page, /Fits.*to spare/)
    await heading(page, 'Bag of scraps, S').waitFor()
    expect(complaints).toEqual([])
  })

  it('is kept while unfinished, says what is missing, and cannot be checked until it is there', async () => {
    const { page } = await phonePage({ at: '#/patterns' })
    await beginPattern(page, 'Half a bag')
    await typePiece(page, { ...SIDE, figures: { Width: '24' } })
    await page.getByText('Side, size one size: type “Height”.').waitFor()
    await expect.poll(() => stored(page, 'patterns')).toMatchObject([{ value: { name: 'Half a bag' } }])
    await page.reload()
    await page.getByText('Side, size one size: type “Height”.').waitFor()
    await expect.poll(() => page.getByRole('button', { name: 'Check a garment' }).isDisabled()).toBe(true)
    await page.getByRole('link', { name: /^Side/ }).tap()
    await figure(page, 'Height').fill('18')
    await done(page)
    await expect.poll(() => page.getByRole('button', { name: 'Check a garment' }).isEnabled()).toBe(true)
  })

  it('is typed from name to last figure with the keyboard’s “next” alone', async () => {
    const { page } = await phonePage({ at: '#/patterns' })
    await beginPattern(page, 'Bag')
    await page.getByRole('button', { name: 'Rectangle' }).tap()
    await figure(page, 'Name').tap()
    for (const typed of ['Side', '24', '18']) {
      await page.keyboard.type(typed)
      await page.keyboard.press('Enter')
    }
    await page.getByText('Cut 24 cm by 18 cm').waitFor()
    await heading(page, 'Side').waitFor()
  })

  it('gives a removed piece back at one tap', async () => {
    const { page } = await phonePage({ at: '#/patterns' })
    await beginPattern(page, 'Bag')
    await typePiece(page, SIDE)
    await page.getByRole('link', { name: /^Side/ }).tap()
    await page.getByRole('button', { name: 'Remove this piece' }).tap()
    await page.getByRole('heading', { name: 'Which shape is the first piece?' }).waitFor()
    await page.getByRole('button', { name: 'Undo' }).tap()
    await page.getByRole('link', { name: /^Side/ }).waitFor()
  })
})

it('a pattern that came with the app is copied to be changed, and stays as it was', async () => {
  const { page } = await phonePage({ at: '#/patterns/headband' })
  await page.getByRole('button', { name: 'Make a copy to change' }).tap()
  await page.getByRole('link', { name: /^Narrow band/ }).tap()
  await figure(page, 'Name').fill('My band')
  await done(page)
  await page.getByRole('link', { name: /^My band/ }).waitFor()
  await expect
    .poll(() => stored(page, 'patterns'))
    .toMatchObject([{ value: { name: 'Headband, my copy', pieces: [{ name: 'My band' }, {}, {}] } }])
  await page.goto(`${page.url().split('#')[0]}#/patterns/headband`)
  await page.getByText('Narrow band').waitFor()
})

describe.each(['light', 'dark'] as const)('the Patterns place on a %s phone', (theme) => {
  it('has no accessibility fault on any of its screens', async () => {
    const { page } = await phonePage({ theme, at: '#/patterns' })
    await page.getByRole('link', { name: /^Leggings/ }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('link', { name: /^Leggings/ }).tap()
    await heading(page, 'Leggings').waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('link', { name: 'Back' }).tap()
    await beginPattern(page, '')
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Band or ruffle' }).tap()
    await heading(page, 'Piece 1').waitFor()
    await expectNoAxeViolations(page)
    await done(page)
    await page.getByRole('button', { name: 'Add a size' }).tap()
    await page.getByRole('dialog').waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Close' }).tap()
    await page.getByRole('button', { name: 'Add a version' }).tap()
    await page.getByRole('dialog').waitFor()
    await expectNoAxeViolations(page)
  })
})
