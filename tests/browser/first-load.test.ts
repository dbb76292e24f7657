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

/** Names in the polygon library that outlive the minifier, being properties: of all of it, and of a part without use here. */
const POLYGON_LIBRARY = 'preserveCollinear'
const UNUSED_PART = 'minkowskiDiff'

/** Names of the built scripts that hold a text. */
function scriptsWith(text: string): readonly string[] {
  const folder = join(inject('appFolder'), 'assets')
  const scripts = readdirSync(folder).filter((name) => name.endsWith('.js'))
  return scripts.filter((name) => readFileSync(join(folder, name), 'utf8').includes(text))
}

const fileName = (url: string) => url.replace(/.*\//, '')

it('the app ships its polygon library once, without the parts nobody uses', () => {
  expect(scriptsWith(POLYGON_LIBRARY)).toHaveLength(1)
  expect(scriptsWith(UNUSED_PART)).toEqual([])
})

it('the licence of the polygon library is among those that the app shows', () => {
  const licences = readFileSync(join(inject('appFolder'), 'third-party-licences.md'), 'utf8')
  expect(licences).toMatch(/^## clipper2-ts - \S+ \(BSL-1\.0\)\n\nBoost Software License/m)
})

it('the page loads no polygon library on the way to its first verdict; the worker does', async () => {
  const holders = scriptsWith(POLYGON_LIBRARY)
  const { page } = await phonePage({ serviceWorkers: 'block' })
  const loaded: string[] = []
  const askedForPolygons = new Set<string>()
  page.on('request', (request) => {
    const name = fileName(request.url())
    loaded.push(name)
    // A module names the one that imported it as where it was asked for.
    if (holders.includes(name)) askedForPolygons.add(fileName(request.headers().referer ?? 'nobody'))
  })
  await page.reload()
  await chooseSportsTop(page)
  await measureTShirt(page)
  await typeStretch(page, '60', '40')
  await page.getByRole('link', { name: /Open the verdict/ }).tap()
  await verdictSaid(page, /Fits/)
  expect(loaded.filter((name) => name.startsWith('check'))).not.toEqual([])
  expect([...askedForPolygons]).toEqual([expect.stringMatching(/^solver\.worker-/)])
})
