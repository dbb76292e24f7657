import type { Pattern } from '../../core/patterns/pattern.ts'
import { draft, tell } from './check-state.ts'
import { changeSettings, settings } from './settings-state.ts'

/** How many patterns are remembered as used. */
const RECENT = 50

/** Takes the pattern, in the size and version she had if it has them, else in its middle size and first version. */
export function chooseMake(pattern: Pattern): void {
  const { size, version } = draft.value
  tell({
    pattern: pattern.id,
    size: pattern.sizes.includes(size) ? size : (pattern.sizes[Math.floor(pattern.sizes.length / 2)] ?? ''),
    version: pattern.versions.some(({ id }) => id === version) ? version : (pattern.versions[0]?.id ?? ''),
  })
  usedPattern(pattern.id)
}

/** Puts the pattern before all others wherever patterns are listed. */
export function usedPattern(id: string): void {
  const others = settings.peek().recentPatterns.filter((each) => each !== id)
  changeSettings({ recentPatterns: [id, ...others].slice(0, RECENT) })
}
