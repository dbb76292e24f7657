import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { chromium } from 'playwright-core'

const USUAL_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

/** Path of a Chromium that runs, or null. `$CHROMIUM_PATH` comes first. */
export function findChromium(): string | null {
  const asked = process.env.CHROMIUM_PATH
  const places = [...(asked ? [asked] : []), ...USUAL_PLACES, chromium.executablePath()]
  return places.find(runs) ?? null
}

function runs(path: string): boolean {
  return existsSync(path) && spawnSync(path, ['--version'], { stdio: 'ignore' }).status === 0
}

/** Installs a Chromium: with apt-get where we may, else playwright's own download. */
function install(): void {
  const isRoot = process.getuid?.() === 0
  if (isRoot && run('apt-get', ['update']) && run('apt-get', aptInstall)) return
  run('npx', ['--no-install', 'playwright-core', 'install', 'chromium'])
}

const aptInstall = ['install', '-y', '--no-install-recommends', 'chromium']

function run(command: string, args: readonly string[]): boolean {
  console.log(`${command} ${args.join(' ')}`)
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  return spawnSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'], env }).status === 0
}

function findOrInstall(): void {
  if (findChromium() === null) install()
  const path = findChromium()
  if (path === null) {
    console.error('The browser tests need Chromium. Install it, or set CHROMIUM_PATH to one that runs.')
    process.exitCode = 1
  } else {
    console.log(`Chromium for the browser tests: ${path}`)
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) findOrInstall()
