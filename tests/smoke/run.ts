import { execFileSync } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { preview } from 'vite'
import type { Engine } from './engine.ts'
import { startFirefox } from './firefox.ts'
import { shopJob } from './shop-job.ts'
import { startWebKit } from './webkit.ts'

/** What `npm run smoke` takes, and what Debian calls what each needs. */
const ENGINES: Readonly<Record<string, { start(): Promise<Engine>; packages: string }>> = {
  firefox: { start: startFirefox, packages: 'firefox-esr' },
  webkit: { start: startWebKit, packages: 'webkit2gtk-driver xvfb' },
}

/** Builds the app, serves it, and does a check in each engine asked for; both when none is. Exits 1 when one fails. */
async function smoke(asked: readonly string[]): Promise<void> {
  const unknown = asked.find((name) => !(name in ENGINES))
  if (unknown !== undefined)
    throw new Error(`there is no “${unknown}”; there is ${Object.keys(ENGINES).join(', ')}`)
  const outDir = await mkdtemp(join(tmpdir(), 'cutworth-smoke-'))
  const args = ['--no-install', 'vite', 'build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'warn']
  execFileSync('npx', args, { stdio: 'inherit' })
  const server = await preview({ build: { outDir }, preview: { port: 0 } })
  try {
    const url = server.resolvedUrls?.local[0] ?? ''
    for (const name of asked.length > 0 ? asked : Object.keys(ENGINES)) await smokeIn(name, url)
  } finally {
    await server.close()
    await rm(outDir, { recursive: true, force: true })
  }
}

async function smokeIn(name: string, url: string): Promise<void> {
  const { start, packages } = ENGINES[name] as (typeof ENGINES)[string]
  console.log(`${name} (Debian: apt-get install ${packages})`)
  const engine = await start()
  try {
    console.log(`  ${engine.name}`)
    await shopJob(engine, url, (step) => console.log(`  ok: ${step}`))
  } catch (error) {
    console.error(`  failed: ${error instanceof Error ? error.message : error}`)
    console.error('  on screen then:', await engine.run('return document.body.innerText').catch(String))
    process.exitCode = 1
  } finally {
    await engine.close()
  }
}

await smoke(process.argv.slice(2))
