import { spawnSync } from 'node:child_process'
import { pathToFileURL } from 'node:url'
import { findChromium } from '../../src/terminal/bench/chromium.ts'
import { LEFT_OUT } from './left-out.ts'

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

/** Without one the other tests run all the same (vitest.config.ts); on CI it is a failure, lest nobody sees. */
function findOrInstall(): void {
  if (process.env.CHROMIUM_PATH !== 'none' && findChromium() === null) install()
  const path = findChromium()
  if (path !== null) {
    console.log(`Chromium for the browser tests: ${path}`)
  } else {
    console.error(`${LEFT_OUT} Install it, or set CHROMIUM_PATH to one that runs.`)
    if (process.env.CI) process.exitCode = 1
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) findOrInstall()
