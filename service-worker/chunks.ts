import { POLYGONS } from './polygons.ts'

/**
 * Screens that one is hardly opened without the others, by how their addresses begin; each area is one file of script.
 * The panels that flaws are marked on need the polygon library, and so does a backup that was received; a check does not.
 */
const AREAS: Readonly<Record<string, string>> = {
  check: 'check/(?!flaws-)|open-check/(?!received-)',
  flaws: 'check/flaws-',
  stash: 'stash/',
  patterns: 'patterns/',
  projects: '(?:projects|cut-sheet|look-for)/',
  notions: 'notions/',
  settings: 'settings/|open-check/received-',
}

/** As much of the bundler's knowledge as is asked for. */
interface Modules {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null
}

const known = new Map<string, boolean>()

/** True if the module cannot run without the polygon library. A folder's face passes on only what is asked of it. */
function needsPolygons(id: string, modules: Modules): boolean {
  const before = known.get(id)
  if (before !== undefined) return before
  known.set(id, false)
  const imported = /\/index\.ts$/.test(id) ? [] : (modules.getModuleInfo(id)?.importedIds ?? [])
  const needs = id.startsWith(POLYGONS) || imported.some((each) => needsPolygons(each, modules))
  known.set(id, needs)
  return needs
}

/** A chunk of those modules of some folders that do without the polygon library. */
function without(name: string, folders: RegExp) {
  return {
    name: (id: string, modules: Modules) => (folders.test(id) && !needsPolygons(id, modules) ? name : null),
  }
}

/**
 * The scripts that the app is cut into. Before anything works without network every file costs a round trip, and files of a
 * few hundred bytes pack badly: so there are few. What the first screen needs is one file, and the rest is parted by when it
 * is wanted; `cloth` is what needs the polygon library. A module goes to the first that takes it; a new area of screens
 * needs a line in `AREAS`.
 */
export const CHUNKS = [
  { name: 'start', tags: ['$initial' as const] },
  { name: 'demo', test: /\/demo-data\/(garments|notions|projects)\// },
  { name: 'shipped-patterns', test: /\/demo-data\/patterns\// },
  without('core', /\/src\/core\//),
  without('shared', /\/src\/(readers|storage|workers|ui\/(drawing|parts|photos|state|words))\//),
  { name: 'cloth', test: /\/src\/(core|storage)\// },
  ...Object.entries(AREAS).map(([name, folders]) => ({
    name,
    test: new RegExp(`/src/ui/screens/(${folders})`),
  })),
]
