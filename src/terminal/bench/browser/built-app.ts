import { execFileSync } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, chromium } from 'playwright-core'
import { findChromium } from '../chromium.ts'

/** Builds the app into a folder of its own and starts Chromium; clears both away when the work is done or fails. */
export async function withBuiltApp<T>(work: (folder: string, browser: Browser) => Promise<T>): Promise<T> {
  const executablePath = findChromium()
  if (executablePath === null) throw new Error('No Chromium found: install one, or set CHROMIUM_PATH.')
  const folder = await mkdtemp(join(tmpdir(), 'cutworth-bench-'))
  execFileSync('npx', [
    '--no-install',
    'vite',
    'build',
    '--outDir',
    folder,
    '--emptyOutDir',
    '--logLevel',
    'warn',
  ])
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
  try {
    return await work(folder, browser)
  } finally {
    await browser.close()
    await rm(folder, { recursive: true, force: true })
  }
}
