import { describe, expect, it } from 'vitest'
import { axeViolations, expectNoAxeViolations } from '../support/accessibility.ts'
import { phonePage } from '../support/phone.ts'

describe.each(['light', 'dark'] as const)('the app opened on a %s phone', (theme) => {
  it('shows a heading and complains of nothing', async () => {
    const { page, complaints } = await phonePage({ theme })
    await page.getByRole('heading', { level: 1 }).waitFor()
    expect(await page.title()).toContain('Cutworth')
    expect(complaints).toEqual([])
  })

  it('has no accessibility fault on its first screen', async () => {
    const { page } = await phonePage({ theme })
    await page.getByRole('heading', { level: 1 }).waitFor()
    await expectNoAxeViolations(page)
  })
})

describe('the accessibility check', () => {
  it('finds a fault that was planted', async () => {
    const { page } = await phonePage()
    await page.evaluate(() => document.body.append(document.createElement('button')))
    expect((await axeViolations(page)).join()).toContain('button-name')
  })
})
