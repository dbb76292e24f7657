import { signal } from '@preact/signals'

export interface UndoOffer {
  /** What was done, as a sentence. */
  readonly said: string
  readonly icon: 'remove' | 'tick'
  readonly undo: () => void
}

/** The last removal or sweeping change, to be taken back until she does something else or waves it away. */
export const undoOffer = signal<UndoOffer | null>(null)

export function offerUndo(said: string, undo: () => void, icon: UndoOffer['icon'] = 'remove'): void {
  undoOffer.value = { said, undo, icon }
}
