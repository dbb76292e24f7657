import { expect, it } from 'vitest'
import { phonePage } from '../support/phone.ts'

it('lets the page run nothing but its own files, and load nothing that it has no use for', async () => {
  const { page } = await phonePage()
  const policy = page.locator('meta[http-equiv="Content-Security-Policy"]')
  await expect
    .poll(() => policy.getAttribute('content'))
    .toBe("default-src 'self'; img-src 'self' blob:; object-src 'none'; base-uri 'none'; form-action 'none'")
  const tries = await page.evaluate(async () => {
    const empty = new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0])
    // Later, for the policy does not hold for what a test evaluates at once.
    const failed = (work: () => unknown) =>
      new Promise((later) => setTimeout(later)).then(work).then(
        () => false,
        () => true,
      )
    return {
      compiled: await failed(() => WebAssembly.compile(empty)),
      evaluated: await failed(() => new Function('return 1')()),
      fetched: await failed(() => fetch('data:text/plain,x')),
    }
  })
  expect(tries).toEqual({ compiled: true, evaluated: true, fetched: true })
})
