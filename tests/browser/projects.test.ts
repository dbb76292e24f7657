import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { addRemnant, beginProject, reserveOn } from '../support/home.ts'
import { phonePage } from '../support/phone.ts'
import { checkCloth, heading, stored, verdictSaid } from '../support/shop.ts'

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

/**
 * Measures the drawings as a tape would, from their two thick edges to the dots and the notches of every piece, and gives the figures of the
 * tables that say otherwise. Figures are rounded to a millimetre.
 */
function misdrawn(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('.cut-sheet')].flatMap((sheet) => {
      const numbers = (from: Element, name: string) =>
        (from.getAttribute(name)?.match(/-?[\d.]+/g) ?? []).map(Number)
      const edges = [...sheet.querySelectorAll('.unprinted .sheet-edge')].map((edge) => numbers(edge, 'd'))
      const dots = [...sheet.querySelectorAll('.unprinted .sheet-point')].map((dot) =>
        ['cx', 'cy'].map((name) => Number(dot.getAttribute(name))),
      )
      // One or two strokes, each from the cut edge inward: a notch is where they begin, or between.
      const notches = [...sheet.querySelectorAll('.unprinted .notch')].map((stroke) => {
        const d = numbers(stroke, 'd')
        const last = d.length - 4
        return [(d[0]! + d[last]!) / 2, (d[1]! + d[last + 1]!) / 2]
      })
      const rowsOf = (kind: string) => [...sheet.querySelectorAll(`.distances tbody tr${kind}`)]
      const rows = [...rowsOf(':not(.notch-row)'), ...rowsOf('.notch-row')]
      const drawnAt = [...dots, ...notches]
      if (edges.length !== 2 || dots.length === 0 || drawnAt.length !== rows.length)
        return ['edges, points and notches']
      return drawnAt.flatMap(([x, y], k) => {
        return edges.flatMap(([ax, ay, bx, by], e) => {
          const [dx, dy] = [bx! - ax!, by! - ay!]
          const drawn = Math.abs(dx * (y! - ay!) - dy * (x! - ax!)) / Math.hypot(dx, dy) / 10
          const told = rows[k]?.querySelectorAll('td')[e]?.textContent ?? ''
          return Math.abs(Number.parseFloat(told) - drawn) <= 0.06 ? [] : [`${told} is drawn at ${drawn} cm`]
        })
      })
    }),
  )
}

describe('a raglan top at the table', () => {
  it('has notches that tell the front of a sleeve from its back: drawn, told, and with figures for the tape', async () => {
    const { page, complaints } = await phonePage({ at: '#/stash' })
    await page.getByRole('button', { name: 'Put the demo things here' }).tap()
    await page.getByText(/^\d+ garments$/).waitFor()
    await page.goto(`${page.url().split('#')[0]}#/projects/demo-summer-top/table`)
    const sleeve = page.getByRole('listitem').filter({ hasText: /Short sleeve, 1 of 2/ })
    await sleeve.getByText('two notches at the back raglan seam').waitFor()
    await sleeve.getByText('one notch at the front raglan seam').waitFor()
    await expect.poll(() => sleeve.getByRole('row', { name: /^2 notches, back raglan seam/ }).count()).toBe(1)
    await page.getByText(/Short thick strokes at an edge are notches/).waitFor()
    expect(await misdrawn(page)).toEqual([])
    expect(complaints).toEqual([])
  })
})

describe('a project from the stash', () => {
  it('is reserved over two donors, cut, and leaves an offcut from which a second one is reserved', async () => {
    const { page, complaints } = await phonePage({ at: '#/stash' })
    for (const remnant of REMNANTS) await addRemnant(page, remnant)

    // One pouch: its outside from the twill, its lining from the lawn.
    await beginProject(page, 'Lined pouch', 'S')
    await reserveOn(page, 'Grey twill', 0)
    await reserveOn(page, 'Rose lawn', 0)
    await page.getByText('all pieces have cloth').waitFor()
    await expect.poll(() => values(page, 'reservations')).toHaveLength(2)

    // At the table: the twill first.
    await page.getByRole('link', { name: 'At the table' }).tap()
    await heading(page, 'At the table').waitFor()
    await expectNoAxeViolations(page)
    const sheet = page.getByRole('region', { name: /of Grey twill/ })
    await expect.poll(() => sheet.getByRole('table').first().textContent()).toContain('From A')
    await expect.poll(() => misdrawn(page)).toEqual([])
    for (const box of await sheet.getByRole('checkbox').all()) await box.check({ force: true })
    await page.reload()
    // The ticks are still there after the phone slept.
    await sheet.getByRole('button', { name: /pieces are cut/ }).tap()
    await sheet.waitFor({ state: 'detached' })
    await expect.poll(async () => (await values(page, 'offcuts')).length).toBeGreaterThan(0)
    const offcuts = await values(page, 'offcuts')

    // What is left of the twill yields a second pouch.
    await page.getByRole('link', { name: 'Back' }).tap()
    await beginProject(page, 'Lined pouch', 'S')
    await reserveOn(page, 'Grey twill', 0)
    const reservedPanels = async () =>
      (await values(page, 'reservations')).flatMap(({ pieces }) => pieces.map(({ panel }) => panel))
    const isOffcut = (panel: string) => offcuts.some(({ id }) => id === panel)
    await expect.poll(async () => (await reservedPanels()).some(isOffcut)).toBe(true)

    // The garment's page tells all of it, and the cut cannot be undone blindly: it is taken back, places and all.
    await page.getByRole('link', { name: 'Stash', exact: true }).tap()
    await page.getByRole('link', { name: /^Grey twill/ }).tap()
    await page.getByRole('heading', { name: 'Reserved for' }).waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Take back' }).tap()
    await page.getByRole('heading', { name: 'Cut from it' }).waitFor({ state: 'detached' })
    await expect.poll(() => values(page, 'offcuts')).toEqual([])
    await expect.poll(() => values(page, 'reservations')).toHaveLength(3)
    expect(complaints).toEqual([])
  })

  it('begins with the places that a check has found, at one tap', async () => {
    const { page } = await phonePage()
    await checkCloth(page, /^Lined pouch/, 'S', ['60', '60'])
    await verdictSaid(page, /Fits/)
    await page.getByRole('button', { name: 'Keep it' }).tap()
    await heading(page, 'Kept in your stash').waitFor()
    await expectNoAxeViolations(page)
    await page.getByRole('button', { name: 'Begin a project with it' }).tap()
    await page.getByText('all pieces have cloth').waitFor()
    const [project] = await values(page, 'projects')
    const [garment] = await values(page, 'garments')
    await expect
      .poll(() => values(page, 'reservations'))
      .toMatchObject([{ project: project?.id, garment: garment?.id }])
  })

  it('names on its page what no longer holds when the cloth is measured anew', async () => {
    const { page } = await phonePage({ at: '#/stash' })
    await addRemnant(page, { name: 'Grey twill', width: '40', length: '40' })
    await beginProject(page, 'Lined pouch', 'S')
    await reserveOn(page, 'Grey twill')
    await page.getByRole('link', { name: /pieces on Grey twill/ }).tap()
    await page.getByRole('button', { name: 'Check it' }).tap()
    await page.getByRole('button', { name: /^Lined pouch/ }).tap()
    await page.getByRole('button', { name: 'Use this' }).tap()
    // Measured anew it is a quarter as long.
    await page.getByRole('link', { name: 'Measures', exact: true }).tap()
    await page.getByLabel('Length', { exact: true }).fill('10')
    await page.getByRole('link', { name: 'Verdict', exact: true }).tap()
    await page.getByRole('button', { name: 'Keep changes' }).tap()
    await heading(page, 'Kept in your stash').waitFor()
    await page.getByRole('link', { name: 'Check another garment' }).tap()
    await page.getByRole('link', { name: 'Projects', exact: true }).tap()
    // The project's page asks for what it shows: nothing is known yet after a reload.
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
