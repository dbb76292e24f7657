import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import preact from '@preact/preset-vite'
import { defineConfig, type Plugin } from 'vite'
import { offline } from './service-worker/build.ts'
import { CHUNKS } from './service-worker/chunks.ts'
import { polygonsApart, polygonsFile } from './service-worker/polygons.ts'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/**
 * The page may load nothing from elsewhere, run no script but its own files, and send nothing anywhere. `blob:` is for
 * photos, which never leave the device.
 */
const SECURITY_POLICY = [
  "default-src 'self'",
  "img-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')

/** Only in the built app: the development server works with inline scripts. */
function securityPolicy(): Plugin {
  return {
    name: 'cutworth-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: SECURITY_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  }
}

/** Those of the README that the manifest names. */
const SCREENSHOTS = ['measures', 'verdict', 'stash'] as const

/** Puts the manifest's screenshots beside it. */
function screenshots(): Plugin {
  return {
    name: 'cutworth-screenshots',
    apply: 'build',
    generateBundle() {
      for (const name of SCREENSHOTS) {
        const source = readFileSync(here(`assets/screenshots/${name}.png`))
        this.emitFile({ type: 'asset', fileName: `screenshots/${name}.png`, source })
      }
    },
  }
}

export default defineConfig({
  root: here('src/ui/app'),
  // Relative addresses: the built folder works on any static host and in any subfolder.
  base: './',
  publicDir: here('assets/static'),
  cacheDir: here('node_modules/.vite'),
  plugins: [preact(), securityPolicy(), screenshots(), polygonsApart(), polygonsFile(), offline()],
  worker: { format: 'es', plugins: () => [polygonsApart()] },
  server: { fs: { allow: [here('.')] } },
  // Where it is taken, the next free one, which is told. `npm start -- --host` serves the local network too.
  preview: { port: 4173, strictPort: false },
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    target: 'es2022',
    license: { fileName: 'third-party-licences.md' },
    rolldownOptions: {
      // What is imported late may lie in a file that is there already: files are cut by area.
      checks: { pluginTimings: false, ineffectiveDynamicImport: false },
      output: { codeSplitting: { groups: CHUNKS } },
    },
  },
})
