import { execFileSync } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserServer, chromium } from 'playwright-core'
import { preview } from 'vite'
import type { TestProject } from 'vitest/node'
import { findChromium } from '../../src/terminal/bench/chromium.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app, with a slash at its end. */
    appUrl: string
    /** Where the files of the built app are. */
    appFolder: string
    /** Where the one Chromium of all browser tests listens. */
    browserAddress: string
  }
}

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** The app is served from a folder that is not the host's root, as static hosts do: it must not mind. */
const SUBFOLDER = 'any-folder'

/** Builds the app into a folder of its own, serves it on a free port, starts Chromium; clears all away at the end. */
export default async function serveApp(project: TestProject): Promise<() => Promise<void>> {
  const served = await mkdtemp(join(tmpdir(), 'cutworth-dist-'))
  const appFolder = join(served, SUBFOLDER)
  buildInto(appFolder)
  const server = await preview({ build: { outDir: served }, preview: { port: 0, strictPort: false } })
  const address = server.httpServer.address()
  if (address === null || typeof address === 'string') throw new Error('the preview server has no port')
  const browser = await startBrowser()
  project.provide('appUrl', `http://localhost:${address.port}/${SUBFOLDER}/`)
  project.provide('appFolder', appFolder)
  project.provide('browserAddress', browser.wsEndpoint())
  return async () => {
    await browser.close()
    await server.close()
    await rm(served, { recursive: true, force: true })
  }
}

/** In a process of its own: the test runner's NODE_ENV would make it a build for development. */
function buildInto(outDir: string): void {
  const args = ['--no-install', 'vite', 'build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'warn']
  execFileSync('npx', args, { stdio: 'inherit', env: { ...process.env, NODE_ENV: 'production' } })
}

async function startBrowser(): Promise<BrowserServer> {
  const executablePath = findChromium()
  if (executablePath === null) throw new Error('No Chromium found: run `npm run pretest`.')
  return chromium.launchServer({ executablePath, args: FLAGS })
}
