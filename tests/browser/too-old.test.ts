import { describe, expect, it } from 'vitest'
import { phonePage } from '../support/phone.ts'

const SAID = /needs Chrome or Edge 108, Firefox 121, Safari 16\.4/

describe('a browser that is too old', () => {
  it.each([
    ['without a method of 2022', 'delete Array.prototype.findLast'],
    ['that cannot style by what is inside', "CSS.supports = (condition) => !condition.includes(':has')"],
    ['without modules', 'delete HTMLScriptElement.prototype.noModule'],
  ])('%s, says so on screen', async (_, script) => {
    const { page } = await phonePage({ before: (opening) => opening.addInitScript(script) })
    const notice = page.getByRole('alert').filter({ hasText: SAID })
    await notice.waitFor()
    // It lies over the app, and goes when she has read it.
    await notice.getByRole('button').tap()
    await notice.waitFor({ state: 'hidden' })
    await page.getByRole('button', { name: /sports top/i }).tap()
    await page.getByRole('button', { name: 'Use this' }).waitFor()
  })

  it('is not this one', async () => {
    const { page, complaints } = await phonePage()
    await page.getByRole('heading', { level: 1 }).waitFor()
    await expect.poll(() => page.getByText(SAID).count()).toBe(1)
    await expect.poll(() => page.getByText(SAID).isVisible()).toBe(false)
    expect(complaints).toEqual([])
  })
})
