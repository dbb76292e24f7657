import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium } from 'playwright-core'

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

/** Path of a Chromium that runs, or null. `$CHROMIUM_PATH` comes first; if it is `none`, there is none. */
export function findChromium(): string | null {
  const asked = process.env.CHROMIUM_PATH
  if (asked === 'none') return null
  const places = [...(asked ? [asked] : []), ...USUAL_PLACES, chromium.executablePath()]
  return places.find(runs) ?? null
}

function runs(path: string): boolean {
  return existsSync(path) && spawnSync(path, ['--version'], { stdio: 'ignore' }).status === 0
}
