import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { preview } from 'vite'
import { expect, it, onTestFinished } from 'vitest'

it('serves the app at the next free port when its own is taken', async () => {
  const outDir = await mkdtemp(join(tmpdir(), 'cutworth-preview-'))
  onTestFinished(() => rm(outDir, { recursive: true }))
  await writeFile(join(outDir, 'index.html'), '<!doctype html><title>served</title>')
  // Somebody else may have taken it already: the same to us.
  const taken = createServer()
    .listen(4173, 'localhost')
    .on('error', () => {})
  onTestFinished(() => void taken.close())
  const server = await preview({ build: { outDir }, logLevel: 'silent' })
  onTestFinished(() => server.close())
  const address = server.resolvedUrls?.local[0] ?? ''
  expect(Number(new URL(address).port)).toBeGreaterThan(4173)
  expect(await fetch(address).then((answer) => answer.text())).toContain('served')
})
