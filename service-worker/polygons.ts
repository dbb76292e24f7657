import { fileURLToPath } from 'node:url'
import { build, type Plugin, type Rolldown } from 'vite'

/** The one file of the app that knows the polygon library. */
const CLIPPER = fileURLToPath(new URL('../src/core/geometry/clipper.ts', import.meta.url))
const LIBRARY = /\/node_modules\/clipper2-ts\//
const LICENCES = 'third-party-licences.md'

/** How the page and the workers import it, lying in the same folder; the hash follows. */
export const POLYGONS = './polygons-'

interface Built {
  readonly fileName: string
  readonly code: string
  /** What the file's own list of licences says, without its heading. */
  readonly licences: string
}

let once: Promise<Built> | null = null

/** Built when first asked for: the page and every worker need its name, which holds a hash of what is in it. */
function polygons(): Promise<Built> {
  once ??= buildPolygons()
  return once
}

/** A build of its own. The library does not say that its modules do nothing by themselves, so that is said here. */
async function buildPolygons(): Promise<Built> {
  const result = await build({
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2022',
      license: { fileName: LICENCES },
      rolldownOptions: {
        input: CLIPPER,
        preserveEntrySignatures: 'strict',
        treeshake: { moduleSideEffects: [{ test: LIBRARY, sideEffects: false }] },
        output: { entryFileNames: 'assets/polygons-[hash].js' },
      },
    },
  })
  const { output } = result as Rolldown.RolldownOutput
  const list = String(licenceList(output).source)
  return {
    fileName: output[0].fileName,
    code: output[0].code,
    licences: list.slice(list.indexOf('## ')),
  }
}

function licenceList(files: readonly (Rolldown.OutputAsset | Rolldown.OutputChunk)[]): Rolldown.OutputAsset {
  const list = files.find(({ fileName }) => fileName === LICENCES)
  if (list?.type !== 'asset') throw new Error(`the build wrote no ${LICENCES}`)
  return list
}

/** For the page and for every worker: leaves the polygon library, and the file that knows it, out of their scripts. */
export function polygonsApart(): Plugin {
  return {
    name: 'cutworth-polygons-apart',
    apply: 'build',
    enforce: 'pre',
    resolveId: {
      filter: { id: /\/clipper\.ts$/ },
      async handler(source, importer) {
        const found = await this.resolve(source, importer, { skipSelf: true })
        if (found?.id !== CLIPPER) return found
        const { fileName } = await polygons()
        return { id: fileName.replace(/^.*\//, './'), external: 'absolute' }
      },
    },
  }
}

/** For the page only: puts the one copy beside its scripts, and its licence among those of the page. */
export function polygonsFile(): Plugin {
  return {
    name: 'cutworth-polygons-file',
    apply: 'build',
    generateBundle: {
      order: 'post',
      async handler(_options, bundle) {
        const { fileName, code, licences } = await polygons()
        this.emitFile({ type: 'asset', fileName, source: code })
        const list = licenceList(Object.values(bundle))
        list.source = `${String(list.source).trimEnd()}\n\n${licences}`
      },
    },
  }
}
