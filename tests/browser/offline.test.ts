import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { builtFiles } from '../support/built-files.ts'
import { type Phone, phonePage, whenKept } from '../support/phone.ts'

/** A phone on which the app has been opened once. */
async function phoneAfterFirstVisit(): Promise<Phone> {
  const phone = await phonePage()
  await whenKept(phone.page)
  return phone
}

const heading = (page: Page) => page.getByRole('heading', { level: 1 })

describe('without network', () => {
  it('the app opens anew after one visit, complaining of nothing', async () => {
    const { page, context, complaints } = await phoneAfterFirstVisit()
    await context.setOffline(true)
    await page.reload()
    await heading(page).waitFor()
    expect(complaints).toEqual([])
  })

  it('it does not open when it was never kept: the network really is off in these tests', async () => {
    const { page, context } = await phonePage({ serviceWorkers: 'block' })
    await heading(page).waitFor()
    await context.setOffline(true)
    await expect(page.reload()).rejects.toThrow('ERR_INTERNET_DISCONNECTED')
  })

  it('every file of the built app is there', async () => {
    const { page, context } = await phoneAfterFirstVisit()
    const files = [...builtFiles()]
    expect(files).toContain('index.html')
    await context.setOffline(true)
    const missing = await page.evaluate(async (names) => {
      const answers = await Promise.all(
        names.map((name) =>
          fetch(name).then(
            ({ ok }) => ok,
            () => false,
          ),
        ),
      )
      return names.filter((_, i) => !answers[i])
    }, files)
    expect(missing).toEqual([])
  })
})
