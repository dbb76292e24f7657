/** Screens that one is hardly opened without the others; each area is one file of script. */
const AREAS: Readonly<Record<string, readonly string[]>> = {
  check: ['check', 'open-check'],
  stash: ['stash'],
  patterns: ['patterns'],
  projects: ['projects', 'cut-sheet', 'look-for'],
  notions: ['notions'],
  settings: ['settings'],
}

/**
 * The scripts that the app is cut into. Before anything works without network every file costs a round trip, and files of a
 * few hundred bytes pack badly: so there are few. What the first screen needs is one file, and the rest is parted by when it
 * is wanted. A module goes to the first that takes it; a new area of screens needs a line in `AREAS`.
 */
export const CHUNKS = [
  { name: 'start', tags: ['$initial' as const] },
  { name: 'demo', test: /\/demo-data\/(garments|notions|projects)\// },
  { name: 'shipped-patterns', test: /\/demo-data\/patterns\// },
  { name: 'core', test: /\/src\/core\/|\/node_modules\/clipper2-ts\// },
  { name: 'shared', test: /\/src\/(readers|storage|workers|ui\/(drawing|parts|photos|state|words))\// },
  ...Object.entries(AREAS).map(([name, folders]) => ({
    name,
    test: new RegExp(`/src/ui/screens/(${folders.join('|')})/`),
  })),
]
