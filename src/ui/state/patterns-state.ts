import { signal } from '@preact/signals'
import type { Fault } from '../../core/base/result.ts'
import { patternFaults } from '../../core/patterns/index.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import { putPattern, readPatterns, removePattern } from '../../storage/stores/patterns.ts'
import { settings } from './settings-state.ts'
import { Shelf } from './shelf.ts'

/** Patterns that come with the app, each fetched when it is first asked for. The file's name is the pattern's id. */
const SHIPPED = Object.entries(
  import.meta.glob<Pattern>('../../../demo-data/patterns/*.json', { import: 'default' }),
).map(([path, load]) => ({ id: path.replace(/^.*\/|\.json$/g, ''), load }))

export const patternShelf = new Shelf<Pattern>({
  name: 'patterns',
  read: readPatterns,
  put: putPattern,
  remove: removePattern,
})

/** Her own patterns, the unfinished ones among them. */
export const ownPatterns = patternShelf.records

/** Shipped patterns fetched so far. */
const fetched = signal<readonly Pattern[]>([])
const asked = new Set<string>()

/**
 * Every pattern there is, the last used first; shipped ones appear as they are fetched. A pattern of her own hides a
 * shipped one of its id.
 */
export function everyPattern(): readonly Pattern[] {
  for (const { id } of SHIPPED) fetchShipped(id)
  const own = new Set(ownPatterns.value.map(({ id }) => id))
  const all = [...ownPatterns.value, ...fetched.value.filter(({ id }) => !own.has(id))]
  const { recentPatterns } = settings.value
  const turn = ({ id }: Pattern) => (recentPatterns.includes(id) ? recentPatterns.indexOf(id) : all.length)
  return all.sort((a, b) => turn(a) - turn(b))
}

/** Those that a garment can be checked for. */
export function allPatterns(): readonly Pattern[] {
  return everyPattern().filter((pattern) => faultsOf(pattern).length === 0)
}

/** The pattern, finished or not, or null while there is none of that id or it is still on its way. */
export function anyPatternById(id: string | null): Pattern | null {
  if (id === null) return null
  const known = [...ownPatterns.value, ...fetched.value].find((pattern) => pattern.id === id)
  if (!known) fetchShipped(id)
  return known ?? null
}

/** The pattern if a garment can be checked for it, else null. Reads signals, so it follows them. */
export function patternById(id: string | null): Pattern | null {
  const pattern = anyPatternById(id)
  return pattern && faultsOf(pattern).length === 0 ? pattern : null
}

const faults = new WeakMap<Pattern, readonly Fault[]>()

/** What is still missing or wrong; nothing: a garment can be checked for it. Shipped patterns are right. */
export function faultsOf(pattern: Pattern): readonly Fault[] {
  if (!isOwn(pattern)) return []
  const known = faults.get(pattern) ?? patternFaults(pattern)
  faults.set(pattern, known)
  return known
}

export function isOwn({ id }: Pattern): boolean {
  return ownPatterns.value.some((own) => own.id === id)
}

/** True for the id of a pattern that comes with the app. */
export function isShipped(id: string): boolean {
  return SHIPPED.some((shipped) => shipped.id === id)
}

function fetchShipped(id: string): void {
  const shipped = SHIPPED.find((candidate) => candidate.id === id)
  if (!shipped || asked.has(id)) return
  asked.add(id)
  shipped.load().then(
    (pattern) => {
      fetched.value = [...fetched.value, pattern].sort((a, b) => a.name.localeCompare(b.name))
    },
    // No network and not yet stored: asked for again the next time it is wanted.
    () => asked.delete(id),
  )
}
