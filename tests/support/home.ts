import type { Page } from 'playwright-core'
import { heading } from './shop.ts'

/** A woven remnant, cm. */
export interface Remnant {
  readonly name: string
  readonly width: string
  readonly length: string
}

/** Puts a remnant into the stash by width and length; ends on its own page. */
export async function addRemnant(page: Page, { name, width, length }: Remnant): Promise<void> {
  await page.getByRole('link', { name: 'Stash', exact: true }).tap()
  await page.getByRole('link', { name: 'Add cloth' }).tap()
  await page.getByLabel('Width', { exact: true }).fill(width)
  await page.getByLabel('Length', { exact: true }).fill(length)
  await page.getByText('Weaving', { exact: true }).tap()
  await page.getByLabel('What it is', { exact: true }).fill(name)
  await page.getByRole('button', { name: 'Put it in the stash' }).tap()
  await heading(page, name).waitFor()
}

/** Begins a project of a shipped pattern in a size, first version; ends on its page. */
export async function beginProject(page: Page, pattern: string, size: string): Promise<void> {
  await page.getByRole('link', { name: 'Projects', exact: true }).tap()
  await page.getByRole('link', { name: 'Begin a project' }).tap()
  await page.getByLabel('Pattern', { exact: true }).selectOption({ label: pattern })
  await page.getByText(size, { exact: true }).tap()
  await page.getByRole('button', { name: 'Begin', exact: true }).tap()
  await page.getByRole('heading', { name: 'Cloth', exact: true }).waitFor()
}

/** On a project's page: finds cloth for its n-th role that has none and reserves the garment of this name. */
export async function reserveOn(page: Page, garment: string, role = 0): Promise<void> {
  await page
    .getByRole('link', { name: /Find (other )?cloth( in the stash)?$/ })
    .nth(role)
    .tap()
  await page.getByRole('link', { name: new RegExp(`^${garment}.*yields`) }).tap()
  await page.getByRole('button', { name: 'Reserve this' }).tap()
  await page.getByRole('heading', { name: 'Cloth', exact: true }).waitFor()
}
