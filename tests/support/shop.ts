import type { Page } from 'playwright-core'

/** A T-shirt as the tape gives it, cm, in the order the app asks. */
export const T_SHIRT = ['54', '54', '70', '46', '24', '9', '22']

/** The first visit: chooses the sports top in size S, plain, and leaves her where a check begins. */
export async function chooseSportsTop(page: Page): Promise<void> {
  await page.getByRole('button', { name: /sports top/i }).tap()
  await page.getByText('S', { exact: true }).tap()
  await page.getByRole('button', { name: 'Use this' }).tap()
  await page.getByRole('heading', { name: 'Out of which garment?' }).waitFor()
}

/** Chooses a pattern and size, first version, and types a remnant of cloth so wide and long, in cm; ends at its verdict. */
export async function checkCloth(
  page: Page,
  make: RegExp,
  size: string,
  figures: readonly [string, string],
): Promise<void> {
  await page.getByRole('button', { name: make }).tap()
  await page.getByText(size, { exact: true }).tap()
  await page.getByRole('button', { name: 'Use this' }).tap()
  await page.getByRole('button', { name: 'Remnant or cloth' }).tap()
  await page.getByLabel('Width', { exact: true }).tap()
  await typeFigures(page, figures)
  await page.getByRole('link', { name: 'Verdict', exact: true }).tap()
}

/** Types figures one after another from the field in focus, the phone's "next" key between them. */
export async function typeFigures(page: Page, figures: readonly string[]): Promise<void> {
  for (const figure of figures) {
    await page.keyboard.type(figure)
    await page.keyboard.press('Enter')
  }
}

/** Begins a check of a T-shirt and types all its measures; ends at the cloth. */
export async function measureTShirt(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'T-shirt' }).tap()
  await page.getByLabel('Chest', { exact: true }).tap()
  await typeFigures(page, T_SHIRT)
  await heading(page, 'What is the cloth like?').waitFor()
}

export async function typeStretch(page: Page, across: string, along: string): Promise<void> {
  await page.getByLabel('Stretch across', { exact: true }).fill(across)
  await page.getByLabel('Stretch along', { exact: true }).fill(along)
}

export function heading(page: Page, name: string | RegExp) {
  return page.getByRole('heading', { level: 1, name })
}

/** Resolves once the verdict on the verdict screen says this. */
export async function verdictSaid(page: Page, said: RegExp): Promise<void> {
  await page.locator('main').getByRole('status').filter({ hasText: said }).waitFor()
}

/** All records of one of the app's stores, as they lie on the disk. */
export function stored(page: Page, store: string): Promise<unknown[]> {
  return page.evaluate(
    (name) =>
      new Promise<unknown[]>((resolve, reject) => {
        const open = indexedDB.open('cutworth')
        open.onerror = () => reject(open.error)
        open.onsuccess = () => {
          const all = open.result.transaction(name).objectStore(name).getAll()
          all.onsuccess = () => {
            open.result.close()
            resolve(all.result)
          }
        }
      }),
    store,
  )
}
