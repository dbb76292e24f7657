import type { Pattern } from '../../core/patterns/pattern.ts'
import { draft, tell } from './check-state.ts'

/** Takes the pattern, in the size and version she had if it has them, else in its middle size and first version. */
export function chooseMake(pattern: Pattern): void {
  const { size, version } = draft.value
  tell({
    pattern: pattern.id,
    size: pattern.sizes.includes(size) ? size : (pattern.sizes[Math.floor(pattern.sizes.length / 2)] ?? ''),
    version: pattern.versions.some(({ id }) => id === version) ? version : (pattern.versions[0]?.id ?? ''),
  })
}
