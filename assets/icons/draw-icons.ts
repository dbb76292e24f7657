import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { findChromium } from '../../src/terminal/bench/chromium.ts'

/**
 * Draws the app's icon and writes it as SVG and PNG into assets/static/icons: a square of cloth with pinked
 * edges, a bodice cut out of it, and in the gap the question the app answers.
 * Run with `npx tsx assets/icons/draw-icons.ts` after a change; the files it writes are kept in the repository.
 */

const TABLE = '#f6f3ec'
const CLOTH = '#31408f'

/** Closed zigzag line around the square from `near` to `far`, `teeth` on a side. */
function pinkedSquare(near: number, far: number, teeth: number): string {
  const half = (far - near) / teeth / 2
  const side = (...tooth: number[]) => `l${tooth.join(' ')}`.repeat(teeth)
  const edges = [
    side(half, -half, half, half),
    side(half, half, -half, half),
    side(-half, half, -half, -half),
    side(-half, -half, half, -half),
  ]
  return `M${near} ${near}${edges.join('')}z`
}

const BODICE =
  'M206 124L152 148Q176 214 130 252Q146 320 146 392Q256 412 366 392Q366 320 382 252Q336 214 360 148L306 124Q300 184 256 184Q212 184 206 124z'

const QUESTION = `
  <path d="M222 262a35 35 0 1 1 53 30q-19 12-19 35" fill="none" stroke="${CLOTH}" stroke-width="24" stroke-linecap="round"/>
  <circle cx="256" cy="365" r="15" fill="${CLOTH}"/>`

function icon(background: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">
  <title>Cutworth</title>${background}
  <path d="${BODICE}" fill="${TABLE}"/>${QUESTION}
</svg>
`
}

const onTable = icon(`
  <rect width="512" height="512" rx="100" fill="${TABLE}"/>
  <path d="${pinkedSquare(70, 442, 12)}" fill="${CLOTH}"/>`)

/** Whatever shape the home screen cuts, it stays inside the cloth; the bodice is within the middle 80 %. */
const maskable = icon(`
  <rect width="512" height="512" fill="${CLOTH}"/>`)

async function drawAll(): Promise<void> {
  const executablePath = findChromium()
  if (executablePath === null) throw new Error('No Chromium found: run `npm run pretest`.')
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] })
  const page = await browser.newPage()
  const file = (name: string) => fileURLToPath(new URL(`../static/icons/${name}`, import.meta.url))
  const drawPng = async (name: string, svg: string, size: number) => {
    await page.setViewportSize({ width: size, height: size })
    await page.setContent(`<style>body{margin:0}svg{display:block}</style>${svg}`)
    await page.screenshot({ path: file(name), omitBackground: true })
  }
  writeFileSync(file('icon.svg'), onTable)
  await drawPng('icon-192.png', onTable, 192)
  await drawPng('icon-512.png', onTable, 512)
  await drawPng('maskable-512.png', maskable, 512)
  await browser.close()
}

await drawAll()
