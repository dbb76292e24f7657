import type { FreePanel } from '../../core/stash/cloth-of.ts'
import { words } from './words.ts'

/** What a panel is called: by its place on the garment, or as an offcut. */
export function panelTitle({ id, from }: Pick<FreePanel, 'id' | 'from'>): string {
  return from === 'offcut' ? words.stash.offcut : (words.garments.panels[id] ?? id)
}
