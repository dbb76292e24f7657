import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { addRemnant } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'
import { chooseSportsTop, heading, measureTShirt, stored, typeStretch, verdictSaid } from '../support/shop.ts'

const DEMO_COUNT = 32

describe('the stash', () => {
  it('says what it is for while it is empty', async () => {
    const { page } = await phonePage({ at: '#/stash' })
    await page.getByRole('heading', { name: 'Nothing here yet' }).waitFor()
    await page.getByRole('link', { name: 'Check a garment' }).tap()
    await heading(page, 'Is it worth cutting?').waitFor()
  })

  it('lists a garment that was kept, lets it be changed, checks it again without a second one, and gives it back', async () => {
    const { page, complaints } = await phonePage()
    await chooseSportsTop(page)
    await measureTShirt(page)
    await typeStretch(page, '55', '25')
    await page.getByRole('link', { name: /Open the verdict/ }).tap()
    await verdictSaid(page, /Fits/)
    await page.getByRole('button', { name: 'Keep it' }).tap()
    await page.getByRole('link', { name: 'Check another garment' }).tap()

    await page.getByRole('link', { name: 'Stash' }).tap()
    const card = page.getByRole('link', { name: /^T-shirt/ })
    await expect.poll(() => card.textContent()).toMatch(/54\s×\s70\scm/)
    await expect.poll(() => card.textContent()).toContain('not washed')
    await card.tap()
    await page.getByText('Washed since I got it').tap()
    await page.getByRole('textbox', { name: 'Name' }).fill('')
    await page.keyboard.type('Blue tee')
    await expect.poll(() => stored(page, 'garments')).toMatchObject([{ value: { name: 'Blue tee' } }])
    await page.reload()
    await heading(page, 'Blue tee').waitFor()
    await expect.poll(() => page.getByLabel('Washed since I got it').isChecked()).toBe(true)

    await page.getByRole('button', { name: /^Check it for/ }).tap()
    await verdictSaid(page, /Fits/)
    await page.getByRole('link', { name: 'Cloth' }).tap()
    await typeStretch(page, '50', '30')
    await page.getByRole('link', { name: /Open the verdict/ }).tap()
    await page.getByRole('button', { name: 'Keep changes' }).tap()
    await heading(page, 'Kept in your stash').waitFor()
    await expect
      .poll(() => stored(page, 'garments'))
      .toMatchObject([
        { value: { name: 'Blue tee', washed: true, cloth: { stretch: { across: 50, along: 30 } } } },
      ])

    await page.getByRole('link', { name: 'Check another garment' }).tap()
    await page.getByRole('link', { name: 'Stash' }).tap()
    await page.getByRole('link', { name: /^Blue tee/ }).tap()
    await page.getByRole('button', { name: 'Remove from the stash' }).tap()
    await page.getByRole('heading', { name: 'Nothing here yet' }).waitFor()
    await page.getByRole('button', { name: 'Undo' }).tap()
    await page.getByRole('link', { name: /^Blue tee/ }).waitFor()
    expect(complaints).toEqual([])
  })

  it('lets measures be changed though nothing is to be made', async () => {
    const { page, complaints } = await phonePage()
    await addRemnant(page, { name: 'Striped linen', width: '60', length: '80' })
    await page.getByRole('button', { name: 'Change measures or flaws' }).tap()
    await page.getByLabel('Width', { exact: true }).fill('65')
    await page.getByRole('link', { name: 'Verdict', exact: true }).tap()
    await page.getByRole('button', { name: 'Keep changes' }).tap()
    await heading(page, 'Kept in your stash').waitFor()
    await expect
      .poll(() => stored(page, 'garments'))
      .toMatchObject([
        { value: { name: 'Striped linen', measures: { 'cloth-width': 650, 'cloth-length': 800 } } },
      ])
    expect(complaints).toEqual([])
  })

  it('takes the demo garments in and out with one tap each, finds one by its words, and leaves hers', async () => {
    const { page } = await phonePage({ at: '#/stash' })
    await page.getByRole('button', { name: 'Put the demo things here' }).tap()
    await expect.poll(async () => (await stored(page, 'garments')).length).toBe(DEMO_COUNT)
    await page.evaluate(hersToo)
    await page.reload()
    await page.getByText(`${DEMO_COUNT + 1} garments`).waitFor()
    await page.getByLabel('Search').fill('linen none such')
    await page.getByText('None of your garments is all that you ask for.').waitFor()
    await page.getByLabel('Search').fill('chino')
    await page.getByText(`1 of ${DEMO_COUNT + 1} garments`).waitFor()
    await page.getByLabel('Search').fill('')
    await page.getByRole('button', { name: 'Remove the demo things' }).tap()
    await page.getByText('one garment').waitFor()
    await page.getByRole('link', { name: /^My own/ }).waitFor()
    await expect.poll(async () => (await stored(page, 'garments')).length).toBe(1)
  })
})

/** Stores a garment of her own beside the demo ones: a copy of one, under another id. */
async function hersToo(): Promise<void> {
  await new Promise<void>((resolve, reject) => {
    const open = indexedDB.open('cutworth')
    open.onerror = () => reject(open.error)
    open.onsuccess = () => {
      const shelf = open.result.transaction('garments', 'readwrite').objectStore('garments')
      const all = shelf.getAll()
      all.onsuccess = () => {
        const [first] = all.result
        shelf.put({ ...first, id: 'hers', value: { ...first.value, id: 'hers', name: 'My own' } })
      }
      shelf.transaction.oncomplete = () => {
        open.result.close()
        resolve()
      }
    }
  })
}

describe.each(['light', 'dark'] as const)('the Stash place on a %s phone', (theme) => {
  it('has no accessibility fault on any of its screens', async () => {
    const { page } = await phonePage({ theme, at: '#/stash' })
    await page.getByRole('heading', { name: 'Nothing here yet' }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Put the demo things here' }).tap()
    await page.getByText(`${DEMO_COUNT} garments`).waitFor()
    await expectNoAxeViolations(page)
    await page.getByLabel('Search').fill('no such thing')
    await page.getByText('None of your garments is all that you ask for.').waitFor()
    await expectNoAxeViolations(page)
    await page.getByLabel('Search').fill('sand chino')
    await page.getByRole('link', { name: /^Sand chinos/ }).tap()
    await page.getByRole('heading', { name: 'Its cloth now' }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Remove from the stash' }).tap()
    await page.getByRole('button', { name: 'Undo' }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('link', { name: 'Add cloth' }).tap()
    await page.getByRole('button', { name: 'Put it in the stash' }).waitFor()
    await expectNoAxeViolations(page)
  })

  it('has no accessibility fault on the page of a garment in use, reserved, cut and with offcuts', async () => {
    const { page } = await phonePage({ theme, at: '#/stash' })
    await page.getByRole('button', { name: 'Put the demo things here' }).tap()
    await page.getByText(`${DEMO_COUNT} garments`).waitFor()
    await page.getByLabel('Search').fill('heather')
    await page.getByRole('link', { name: /^Heather-grey/ }).tap()
    await page.getByRole('heading', { name: 'Cut from it' }).waitFor()
    await page.getByRole('heading', { name: 'Reserved for' }).waitFor()
    await page.getByRole('button', { name: 'Throw away' }).first().waitFor()
    await expectNoAxeViolations(page)
  })
})
