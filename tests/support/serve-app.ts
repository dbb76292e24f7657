import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build, preview } from 'vite'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built app, with a slash at its end. */
    appUrl: string
  }
}

/** Builds the app into a folder of its own, serves it on a free port, and clears both away at the end. */
export default async function serveApp(project: TestProject): Promise<() => Promise<void>> {
  const outDir = await mkdtemp(join(tmpdir(), 'cutworth-dist-'))
  await build({ build: { outDir }, logLevel: 'warn' })
  const server = await preview({ build: { outDir }, preview: { port: 0, strictPort: false } })
  const address = server.httpServer.address()
  if (address === null || typeof address === 'string') throw new Error('the preview server has no port')
  project.provide('appUrl', `http://localhost:${address.port}/`)
  return async () => {
    await server.close()
    await rm(outDir, { recursive: true, force: true })
  }
}
