import { signal } from '@preact/signals'
import type { Pattern } from '../../core/patterns/pattern.ts'

/** Patterns that come with the app, each fetched when it is first asked for. The file's name is the pattern's id. */
const SHIPPED = Object.entries(
  import.meta.glob<Pattern>('../../../demo-data/patterns/*.json', { import: 'default' }),
).map(([path, load]) => ({ id: path.replace(/^.*\/|\.json$/g, ''), load }))

/** Her own patterns, the last changed first. */
export const ownPatterns = signal<readonly Pattern[]>([])

/** Shipped patterns fetched so far. */
const fetched = signal<readonly Pattern[]>([])
const asked = new Set<string>()

/** Her own and the shipped ones; the latter appear as they are fetched. A pattern of her own hides a shipped one of its id. */
export function allPatterns(): readonly Pattern[] {
  for (const { id } of SHIPPED) fetchShipped(id)
  const own = new Set(ownPatterns.value.map(({ id }) => id))
  return [...ownPatterns.value, ...fetched.value.filter(({ id }) => !own.has(id))]
}

/** The pattern, or null while there is none of that id or it is still on its way. Reads signals, so it follows them. */
export function patternById(id: string | null): Pattern | null {
  if (id === null) return null
  const known = [...ownPatterns.value, ...fetched.value].find((pattern) => pattern.id === id)
  if (!known) fetchShipped(id)
  return known ?? null
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
