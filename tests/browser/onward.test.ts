import { expect, it } from 'vitest'
import { addRemnant, reserveOn } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'
import { heading } from '../support/shop.ts'

it('leads from a pattern to a project in the size and version shown, and from there to what to look for', async () => {
  const { page, complaints } = await phonePage({ at: '#/patterns/boxer-shorts' })
  await heading(page, 'Boxer shorts').waitFor()
  await page.getByText('XL', { exact: true }).tap()
  await page.getByText('With a back pocket', { exact: true }).tap()
  await page.getByRole('link', { name: 'Begin a project' }).tap()
  await heading(page, 'What will you make?').waitFor()
  await expect.poll(() => page.getByRole('radio', { name: 'XL', exact: true }).isChecked()).toBe(true)
  await expect.poll(() => page.getByRole('radio', { name: 'With a back pocket' }).isChecked()).toBe(true)
  await page.getByRole('button', { name: 'Begin', exact: true }).tap()
  await page.getByText('Boxer shorts, size XL').waitFor()
  const project = page.url()

  // Two cloths without anything to cut them from: each is looked for by itself.
  await page.getByRole('button', { name: 'What to look for' }).tap()
  await page.getByText('size XL, With a back pocket, Main cloth only').waitFor()
  await page.getByText('size XL, With a back pocket, Contrast only').waitFor()
  await page.getByRole('button', { name: 'Stop' }).tap()

  await addRemnant(page, { name: 'Scrap', width: '25', length: '25' })
  await page.goto(project)
  await reserveOn(page, 'Scrap', 1)
  await page.getByRole('button', { name: 'What to look for' }).waitFor()
  await addRemnant(page, { name: 'Length', width: '150', length: '150' })
  await page.goto(project)
  await reserveOn(page, 'Length')
  await page.getByText('all pieces have cloth').waitFor()
  await expect.poll(() => page.getByRole('button', { name: 'What to look for' }).count()).toBe(0)
  expect(complaints).toEqual([])
})
