import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { expect, inject, it } from 'vitest'
import { phonePage } from '../support/phone.ts'
import { chooseSportsTop, measureTShirt, typeStretch, verdictSaid } from '../support/shop.ts'

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

/** A name in the polygon library that outlives the minifier: it is a property. */
const POLYGON_LIBRARY = 'preserveCollinear'

/** Names of the built scripts that hold it. */
function scriptsWithPolygons(): readonly string[] {
  const scripts = readdirSync(join(inject('appFolder'), 'assets')).filter((name) => name.endsWith('.js'))
  return scripts.filter((name) =>
    readFileSync(join(inject('appFolder'), 'assets', name), 'utf8').includes(POLYGON_LIBRARY),
  )
}

it('the page loads no polygon library on the way to its first verdict; the worker has it', async () => {
  const holders = scriptsWithPolygons()
  expect(holders.filter((name) => name.startsWith('solver.worker'))).toHaveLength(1)
  const { page } = await phonePage({ serviceWorkers: 'block' })
  const loaded: string[] = []
  page.on('request', (request) => loaded.push(request.url().replace(/.*\//, '')))
  await page.reload()
  await chooseSportsTop(page)
  await measureTShirt(page)
  await typeStretch(page, '60', '40')
  await page.getByRole('link', { name: /Open the verdict/ }).tap()
  await verdictSaid(page, /Fits/)
  expect(loaded.filter((name) => name.startsWith('check'))).not.toEqual([])
  expect(loaded.filter((name) => holders.includes(name) && !name.startsWith('solver.worker'))).toEqual([])
})
