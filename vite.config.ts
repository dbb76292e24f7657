import { fileURLToPath } from 'node:url'
import preact from '@preact/preset-vite'
import { defineConfig, type Plugin } from 'vite'
import { offline } from './service-worker/build.ts'
import { CHUNKS } from './service-worker/chunks.ts'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/**
 * The page may load nothing from elsewhere and run no script but its own files. `wasm-unsafe-eval` is for the OCR
 * of labels; `data:` and `blob:` are for photos, which never leave the device.
 */
const SECURITY_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "connect-src 'self' data: blob:",
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

export default defineConfig({
  root: here('src/ui/app'),
  // Relative addresses: the built folder works on any static host and in any subfolder.
  base: './',
  publicDir: here('assets/static'),
  cacheDir: here('node_modules/.vite'),
  plugins: [preact(), securityPolicy(), offline()],
  worker: { format: 'es' },
  server: { fs: { allow: [here('.')] } },
  preview: { port: 4173, strictPort: true },
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    target: 'es2022',
    license: { fileName: 'third-party-licences.md' },
    rolldownOptions: { checks: { pluginTimings: false }, output: { codeSplitting: { groups: CHUNKS } } },
  },
})
