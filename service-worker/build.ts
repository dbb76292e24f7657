import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build, type Plugin } from 'vite'
import { injectManifest } from 'workbox-build'

const SOURCE = fileURLToPath(new URL('service-worker.ts', import.meta.url))
const NAME = 'service-worker.js'

/** Some ten times the largest there is. A larger one fails the build instead of being left out. */
const LARGEST_FILE_BYTES = 6e6

/** Once the app is built, builds its service worker beside it, which keeps every file of it for offline use. */
export function offline(): Plugin {
  let outDir = ''
  return {
    name: 'cutworth-offline',
    apply: 'build',
    configResolved(config) {
      outDir = resolve(config.root, config.build.outDir)
    },
    writeBundle: {
      order: 'post',
      sequential: true,
      async handler() {
        await buildServiceWorker(outDir)
        await listFiles(outDir)
      },
    },
  }
}

/** A build of its own: a service worker is one classic script. */
async function buildServiceWorker(outDir: string): Promise<void> {
  await build({
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    build: {
      outDir,
      emptyOutDir: false,
      target: 'es2022',
      license: { fileName: 'service-worker-licences.md' },
      rolldownOptions: { input: SOURCE, output: { format: 'iife', entryFileNames: NAME } },
    },
  })
}

/** Writes the list of the app's files into the service worker. Throws on any warning: a file would be missing offline. */
async function listFiles(outDir: string): Promise<void> {
  const worker = resolve(outDir, NAME)
  const { warnings, count, size } = await injectManifest({
    swSrc: worker,
    swDest: worker,
    globDirectory: outDir,
    globPatterns: ['**/*'],
    // Pictures for whoever thinks of installing the app: it never shows them itself.
    globIgnores: [NAME, 'screenshots/**'],
    maximumFileSizeToCacheInBytes: LARGEST_FILE_BYTES,
    // Their names hold a hash already.
    dontCacheBustURLsMatching: /^assets\/.+-[\w-]{8}\.\w+$/,
  })
  if (warnings.length > 0) throw new Error(`not everything would work offline:\n${warnings.join('\n')}`)
  console.log(`offline: ${count} files, ${(size / 1024).toFixed(0)} kB`)
}
