import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { addRemnant, beginProject, reserveOn } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'
import { heading, stored } from '../support/shop.ts'

const REMNANTS = [
  { name: 'Grey twill', width: '60', length: '60' },
  { name: 'Rose lawn', width: '40', length: '50' },
  { name: 'Red felt', width: '12', length: '12' },
  { name: 'Blue canvas', width: '15', length: '10' },
] as const

interface Stored {
  readonly id: string
  readonly value: Record<string, unknown> & { readonly pieces: readonly { readonly panel: string }[] }
}

const values = async (page: Page, store: string) =>
  ((await stored(page, store)) as Stored[]).map(({ value }) => value)

describe('a project from the stash', () => {
  it('is reserved over two donors, cut, and leaves an offcut from which a second one is reserved', async () => {
    const { page, complaints } = await phonePage({ at: '#/stash' })
    for (const remnant of REMNANTS) await addRemnant(page, remnant)

    // One pouch: its outside from the twill, its lining from the lawn.
    await beginProject(page, 'Lined pouch', 'S')
    await reserveOn(page, 'Grey twill', 0)
    await reserveOn(page, 'Rose lawn', 0)
    await page.getByText('all pieces have cloth').waitFor()
    expect(await values(page, 'reservations')).toHaveLength(2)

    // At the table: the twill first.
    await page.getByRole('link', { name: 'At the table' }).tap()
    await heading(page, 'At the table').waitFor()
    await expectNoAxeViolations(page)
    const sheet = page.getByRole('region', { name: /of Grey twill/ })
    expect(await sheet.getByRole('table').first().textContent()).toContain('From A')
    for (const box of await sheet.getByRole('checkbox').all()) await box.check({ force: true })
    await page.reload()
    // The ticks are still there after the phone slept.
    await sheet.getByRole('button', { name: /pieces are cut/ }).tap()
    await sheet.waitFor({ state: 'detached' })
    const offcuts = await values(page, 'offcuts')
    expect(offcuts.length).toBeGreaterThan(0)

    // What is left of the twill yields a second pouch.
    await page.getByRole('link', { name: 'Back' }).tap()
    await beginProject(page, 'Lined pouch', 'S')
    await reserveOn(page, 'Grey twill', 0)
    const onOffcut = (await values(page, 'reservations')).flatMap(({ pieces }) => pieces)
    expect(onOffcut.some(({ panel }) => offcuts.some(({ id }) => id === panel))).toBe(true)

    // The garment's page tells all of it, and the cut cannot be undone blindly: it is taken back, places and all.
    await page.getByRole('link', { name: 'Stash', exact: true }).tap()
    await page.getByRole('link', { name: /^Grey twill/ }).tap()
    await page.getByRole('heading', { name: 'Reserved for' }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Take back' }).tap()
    await page.getByRole('heading', { name: 'Cut from it' }).waitFor({ state: 'detached' })
    expect(await values(page, 'offcuts')).toEqual([])
    const back = (await values(page, 'reservations')).filter(({ garment }) => garment !== undefined)
    expect(back).toHaveLength(3)
    expect(complaints).toEqual([])
  })

  it('keeps what a check found at one tap, and names what no longer holds when the cloth is measured anew', async () => {
    const { page } = await phonePage({ at: '#/stash' })
    await addRemnant(page, { name: 'Grey twill', width: '40', length: '40' })
    await beginProject(page, 'Lined pouch', 'S')
    await reserveOn(page, 'Grey twill')
    await page.getByRole('link', { name: /pieces on Grey twill/ }).tap()
    await page.getByRole('button', { name: /^Check it/ }).tap()
    await heading(page, /garment|make|cutting/i).waitFor()
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const open = indexedDB.open('cutworth')
          open.onerror = () => reject(open.error)
          open.onsuccess = () => {
            const transaction = open.result.transaction('garments', 'readwrite')
            const store = transaction.objectStore('garments')
            store.getAll().onsuccess = ({ target }) => {
              const [record] = (target as IDBRequest).result
              record.value.measures['cloth-length'] = 100
              store.put(record)
            }
            transaction.oncomplete = () => {
              open.result.close()
              resolve()
            }
          }
        }),
    )
    await page.goto(`${page.url().split('#')[0]}#/projects`)
    await page.reload()
    await page.getByRole('link', { name: /^Lined pouch/ }).tap()
    await page.getByText('This no longer holds').waitFor()
    await expectNoAxeViolations(page)
  })
})

describe('on a dark phone, no screen of the projects has an accessibility fault', () => {
  it('from the empty list to a project', async () => {
    const { page } = await phonePage({ at: '#/projects', theme: 'dark' })
    await page.getByRole('heading', { name: 'Nothing under way' }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('link', { name: 'Begin a project' }).tap()
    await heading(page, 'What will you make?').waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Begin', exact: true }).tap()
    await page.getByRole('heading', { name: 'What it saves' }).waitFor()
    await expectNoAxeViolations(page)
    await page
      .getByRole('link', { name: /Find cloth/ })
      .first()
      .tap()
    await heading(page, /^Cloth for/).waitFor()
    await expectNoAxeViolations(page)
  })
})
