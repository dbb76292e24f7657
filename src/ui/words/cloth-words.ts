import type { FreePanel } from '../../core/stash/cloth-of.ts'
import { stashWords } from './en/stash.ts'
import { words } from './words.ts'

/** What a panel is called: by its place on the garment, or as an offcut. */
export function panelTitle({ id, from }: Pick<FreePanel, 'id' | 'from'>): string {
  return from === 'offcut' ? stashWords.offcut : (words.garments.panels[id] ?? id)
}
