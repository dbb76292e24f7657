import { fileURLToPath } from 'node:url'
import preact from '@preact/preset-vite'
import { defineConfig } from 'vite'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

export default defineConfig({
  root: here('src/ui/app'),
  // Relative addresses: the built folder works on any static host and in any subfolder.
  base: './',
  publicDir: here('assets/static'),
  cacheDir: here('node_modules/.vite'),
  plugins: [preact()],
  worker: { format: 'es' },
  server: { fs: { allow: [here('.')] } },
  preview: { port: 4173, strictPort: true },
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    target: 'es2022',
    license: { fileName: 'third-party-licences.md' },
  },
})
