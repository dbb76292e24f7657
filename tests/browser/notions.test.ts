import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage } from '../support/phone.ts'
import { heading, stored } from '../support/shop.ts'

const figure = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })

const DEMO_COUNT = 16

async function open(page: Page, place: string): Promise<void> {
  await page.goto(`${page.url().split('#')[0]}#${place}`)
}

/** The demo comes and goes in the stash; ends among the notions. */
async function loadDemo(page: Page): Promise<void> {
  await open(page, '/stash')
  await button(page, 'Put the demo things here').tap()
  await expect.poll(async () => (await stored(page, 'notions')).length).toBe(DEMO_COUNT)
  await open(page, '/notions')
}

/** An elastic of 25 mm with these lengths, cm. */
async function typeElastic(page: Page, lengths: readonly string[]): Promise<void> {
  await button(page, 'Add a notion').tap()
  await button(page, 'Elastic').tap()
  await figure(page, 'Name').fill('Waist elastic')
  await figure(page, 'Width').fill('2.5')
  for (const length of lengths) {
    await figure(page, 'Another length').fill(length)
    await button(page, 'Add a length').tap()
  }
}

describe('notions', () => {
  it('are reached from the stash, typed in, outlive a reload, and come back when removed', async () => {
    const { page, complaints } = await phonePage({ at: '#/stash' })
    await page.getByRole('link', { name: /^Notions/ }).tap()
    await page.getByRole('heading', { name: 'Nothing here yet' }).waitFor()
    await typeElastic(page, ['200', '76'])
    await expect
      .poll(() => stored(page, 'notions'))
      .toMatchObject([{ value: { kind: 'elastic', name: 'Waist elastic', width: 25, lengths: [2000, 760] } }])

    await page.reload()
    await heading(page, 'Waist elastic').waitFor()
    await button(page, 'Remove 200 cm').tap()
    await expect.poll(() => stored(page, 'notions')).toMatchObject([{ value: { lengths: [760] } }])
    await button(page, 'Undo').tap()
    await expect.poll(() => stored(page, 'notions')).toMatchObject([{ value: { lengths: [2000, 760] } }])

    await button(page, 'Remove this notion').tap()
    await page.getByRole('heading', { name: 'Nothing here yet' }).waitFor()
    await button(page, 'Undo').tap()
    await expect
      .poll(() => page.getByRole('link', { name: /^Waist elastic/ }).textContent())
      .toContain('2 lengths, 276 cm')
    expect(complaints).toEqual([])
  })

  it('begun and left blank are not kept', async () => {
    const { page } = await phonePage({ at: '#/notions' })
    await button(page, 'Add a notion').tap()
    await button(page, 'Zip').tap()
    await heading(page, 'Zip').waitFor()
    await page.getByRole('link', { name: 'Back' }).tap()
    await page.getByRole('heading', { name: 'Nothing here yet' }).waitFor()
  })

  it('of the demo come and go with one tap, and hers stay', async () => {
    const { page } = await phonePage({ at: '#/notions' })
    await loadDemo(page)
    await typeElastic(page, ['50'])
    await page.getByRole('link', { name: 'Back' }).tap()
    await open(page, '/stash')
    await button(page, 'Remove the demo things').tap()
    await expect.poll(async () => (await stored(page, 'notions')).length).toBe(1)
    await open(page, '/notions')
    await page.getByRole('link', { name: /^Waist elastic/ }).waitFor()
  })

  it('are laid out for a pattern: the remnant that is just long enough, and what to buy', async () => {
    const { page } = await phonePage({ at: '#/notions' })
    await typeElastic(page, ['200', '76'])
    await open(page, '/patterns/leggings')
    await page.getByText('M', { exact: true }).tap()
    // 78 cm waist × 0.88 + 2 cm = 70.64 cm, up to the next millimetre.
    await page.getByText('From the 76 cm cut 70.7 cm; 5.3 cm are left.').waitFor()
    // 102 cm hips over a ring of 68.64 cm: 48.6 %.
    await page.getByText(/must stretch by 49 % to pass over 102 cm/).waitFor()
    await open(page, '/patterns/half-circle-skirt')
    await page.getByText('Zip, 20 cm long: 1, for “Zip for the side”').waitFor()
  })
})

describe('a project', () => {
  it('has its elastic cut from the notions and noted, all in one, and given back by one tap', async () => {
    const { page, complaints } = await phonePage({ at: '#/notions' })
    await typeElastic(page, ['200', '76'])
    await open(page, '/projects/new/leggings')
    await page.getByText('M', { exact: true }).tap()
    await button(page, 'Begin').tap()
    await page.getByText('From the 76 cm cut 70.7 cm; 5.3 cm are left.').waitFor()
    await expectNoAxeViolations(page)
    await expect.poll(async () => (await stored(page, 'projects')).length).toBe(1)

    await button(page, 'Cut these lengths').tap()
    await page.getByText('All of it is cut or taken.').waitFor()
    const [notion] = (await stored(page, 'notions')) as { value: { id: string; lengths: number[] } }[]
    expect(notion?.value.lengths[0]).toBe(2000)
    expect(notion?.value.lengths[1]).toBeCloseTo(53.6, 6)
    const [project] = (await stored(page, 'projects')) as { value: { taken: unknown[] } }[]
    expect(project?.value.taken).toMatchObject([{ need: 'waist-elastic', notion: notion?.value.id }])

    await button(page, 'Undo').tap()
    await button(page, 'Cut these lengths').waitFor()
    await expect.poll(() => stored(page, 'notions')).toMatchObject([{ value: { lengths: [2000, 760] } }])
    await expect.poll(() => stored(page, 'projects')).toMatchObject([{ value: { taken: [] } }])
    expect(complaints).toEqual([])
  })
})

describe('a pattern of her own', () => {
  it('takes an elastic by the body, size by size, and gives it back when removed', async () => {
    const { page } = await phonePage({ at: '#/patterns/headband' })
    await button(page, 'Make a copy to change').tap()
    await button(page, 'Add one').tap()
    await figure(page, 'Name').last().fill('Back elastic')
    await figure(page, 'Of that length').fill('50')
    await figure(page, 'Body or edge, size M').fill('20')
    await button(page, 'Done').tap()
    await expect
      .poll(() => stored(page, 'patterns'))
      .toMatchObject([
        {
          value: { notions: [{ name: 'Back elastic', amount: { edge: { M: 200 }, ratio: 0.5, extra: 20 } }] },
        },
      ])
    await button(page, /^Back elastic/).tap()
    await button(page, 'Remove it').tap()
    await expect.poll(() => stored(page, 'patterns')).toMatchObject([{ value: { notions: [] } }])
    await button(page, 'Undo').tap()
    await button(page, /^Back elastic/).waitFor()
    await page.getByRole('link', { name: 'Done' }).tap()
    await page.getByText('M', { exact: true }).tap()
    await page.getByText('Elastic: 12 cm, for “Back elastic”').waitFor()
    await page.getByText('S', { exact: true }).tap()
    await page.getByText('The pattern has no figure for size S yet.').waitFor()
  })
})

describe('strips and tiers', () => {
  it('says how many strips a ruffle takes from a cloth, and whether the cloth is enough', async () => {
    const { page } = await phonePage({ at: '#/strips' })
    await page.getByText('Type all the figures above.').waitFor()
    await page.getByText('Ruffle or band', { exact: true }).tap()
    await figure(page, 'Edge it is sewn to').fill('120')
    await figure(page, 'Finished width').fill('8')
    await figure(page, 'Width of the cloth').fill('70')
    await figure(page, 'Length of the cloth').fill('40')
    await page.getByText('Strips: 3 × 70 cm and 38 cm').waitFor()
    await page.getByText('Takes 40 cm of the 40 cm.').waitFor()
    await page.getByText('Torn, not cut').tap()
    await page.getByText('In rows of one height it takes 44 cm, and there are only 40 cm.').waitFor()
    await page.getByText('along it', { exact: true }).tap()
    await page.getByText(/it takes 77 cm, and there are only 70 cm/).waitFor()
  })
})

describe.each(['light', 'dark'] as const)('the notions on a %s phone', (theme) => {
  it('have no accessibility fault on any of their screens', async () => {
    const { page } = await phonePage({ theme, at: '#/notions' })
    await button(page, 'Add a notion').waitFor()
    await expectNoAxeViolations(page)
    await loadDemo(page)
    await expectNoAxeViolations(page)
    await button(page, 'Add a notion').tap()
    await page.getByRole('dialog').waitFor()
    await expectNoAxeViolations(page)
    await button(page, 'Close').tap()
    await page.getByRole('link', { name: /^Soft waist elastic/ }).tap()
    await heading(page, 'Soft waist elastic').waitFor()
    await expectNoAxeViolations(page)
    await open(page, '/patterns/pouch')
    await page.getByText('Ring for the wrist strap').waitFor()
    await expectNoAxeViolations(page)
    await open(page, '/patterns/leggings')
    await button(page, 'Make a copy to change').tap()
    await button(page, /^Elastic for the waist/).tap()
    await page.getByRole('dialog').waitFor()
    await expectNoAxeViolations(page)
    await open(page, '/strips')
    await heading(page, 'Strips and tiers').waitFor()
    await figure(page, 'Edge it is gathered to').fill('72')
    await figure(page, 'Finished length of all tiers').fill('60')
    await figure(page, 'Width of the cloth').fill('140')
    await figure(page, 'Length of the cloth').fill('300')
    await page.getByRole('img', { name: 'The strips on the cloth' }).waitFor()
    await expectNoAxeViolations(page)
  })
})
