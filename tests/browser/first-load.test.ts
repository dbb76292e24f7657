import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { expect, inject, it } from 'vitest'
import { phonePage } from '../support/phone.ts'

const MOST_KB = 80

/** Size of a script of the app as a host that compresses would send it. */
function gzippedKb(url: string): number {
  const file = join(inject('appFolder'), url.slice(inject('appUrl').length))
  return gzipSync(readFileSync(file), { level: 9 }).length / 1024
}

it(`the first screen stands with at most ${MOST_KB} kB of script, gzipped`, async () => {
  const { page } = await phonePage({ serviceWorkers: 'block' })
  const scripts = new Set<string>()
  page.on('request', (request) => {
    if (request.resourceType() === 'script') scripts.add(request.url())
  })
  await page.reload()
  await page.getByRole('heading', { level: 1 }).waitFor()
  const total = [...scripts].reduce((sum, url) => sum + gzippedKb(url), 0)
  expect(scripts.size).toBeGreaterThan(0)
  expect(total).toBeLessThanOrEqual(MOST_KB)
})
