import { text as textOf } from 'node:stream/consumers'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readLay } from '../../src/readers/problem-file/lay-schema.ts'
import { readProblem } from '../../src/readers/problem-file/read-problem.ts'
import { expectNoAxeViolations } from '../support/accessibility.ts'
import { layFaults } from '../support/lay-checker.ts'
import { phonePage } from '../support/phone.ts'
import { chooseSportsTop, heading, measureTShirt, typeStretch, verdictSaid } from '../support/shop.ts'

/** What the page downloads when this is done. */
async function downloaded(page: Page, work: () => Promise<void>): Promise<{ name: string; text: string }> {
  const [file] = await Promise.all([page.waitForEvent('download'), work()])
  return { name: file.suggestedFilename(), text: await textOf(await file.createReadStream()) }
}

const choose = (page: Page, name: string, text: string) =>
  page
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) })

const square = (side: number) => [
  [0, 0],
  [side, 0],
  [side, side],
  [0, side],
]

const problem = (panel: number, piece: number, count: number) =>
  JSON.stringify({
    format: 'cutworth-problem/1',
    name: 'Coasters',
    panels: [{ id: 'front', outline: square(panel) }],
    pieces: [{ id: 'Coaster', count, outline: square(piece) }],
  })

describe('a check as a file', () => {
  it('is written by the verdict, opened elsewhere with the same verdict, and its lay is true', async () => {
    const { page } = await phonePage()
    await chooseSportsTop(page)
    await measureTShirt(page)
    await typeStretch(page, '55', '25')
    await page.getByRole('link', { name: /Open the verdict/ }).tap()
    await verdictSaid(page, /Fits/)
    const check = await downloaded(page, () => page.getByRole('button', { name: 'Share this check' }).tap())
    expect(check.name).toMatch(/sports-top-s\.json$/)
    expect(readProblem(check.text)).toMatchObject({ ok: true, value: { panels: { length: 4 } } })

    const other = await phonePage({ at: '#/open-check' })
    await choose(other.page, check.name, check.text)
    await verdictSaid(other.page, /Fits.*to spare/)
    await other.page.getByRole('button', { name: /^Front: / }).waitFor()
    const lay = await downloaded(other.page, () =>
      other.page.getByRole('button', { name: 'Save this lay as a file' }).tap(),
    )
    expect(readLay(lay.text)).toMatchObject({ ok: true, value: { verdict: 'fits' } })
    expect(layFaults(JSON.parse(check.text), JSON.parse(lay.text))).toEqual([])
    expect(other.complaints).toEqual([])
  })

  it('is opened from the Check place, and says why it cannot be', async () => {
    const { page } = await phonePage()
    await page.getByRole('link', { name: 'Open a shared check' }).tap()
    await heading(page, 'A shared check').waitFor()
    await choose(page, 'coasters.json', problem(250, 100, 5))
    await verdictSaid(page, /Cannot.*Coaster/)
    await page.getByRole('heading', { name: 'Coasters' }).waitFor()
    await page.getByText('Coaster, 5 ×').waitFor()
  })

  it.each([
    ['what is no JSON', 'not at all', /The file is not JSON/],
    [
      'a field that is wrong',
      problem(250, 100, 5).replace('"count":5', '"count":"five"'),
      /pieces\[0\]\.count/,
    ],
    [
      'an outline that crosses itself',
      problem(250, 100, 5).replace('[250,0],[250,250]', '[250,250],[250,0]'),
      /panels\[0\]\.outline edges/,
    ],
  ])('that holds %s is refused in words that name the field', async (_, text, said) => {
    const { page } = await phonePage({ at: '#/open-check' })
    await choose(page, 'check.json', text)
    const alert = page.getByRole('alert')
    await alert.waitFor()
    await expect.poll(() => alert.textContent()).toMatch(said)
    await choose(page, 'check.json', problem(250, 100, 4))
    await verdictSaid(page, /Fits/)
  })
})

describe.each(['light', 'dark'] as const)('an opened check on a %s phone', (theme) => {
  it('has no accessibility fault, whatever was opened', async () => {
    const { page } = await phonePage({ theme, at: '#/open-check' })
    await heading(page, 'A shared check').waitFor()
    await expectNoAxeViolations(page)
    await choose(page, 'check.json', '{}')
    await page.getByRole('alert').waitFor()
    await expectNoAxeViolations(page)
    await choose(page, 'check.json', problem(250, 100, 4))
    await verdictSaid(page, /Fits/)
    await expectNoAxeViolations(page)
  })
})
