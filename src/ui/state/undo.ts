import { signal } from '@preact/signals'

export interface UndoOffer {
  /** What was done, as a sentence. */
  readonly said: string
  readonly undo: () => void
}

/** The last removal, to be taken back until something else is removed or she waves it away. */
export const undoOffer = signal<UndoOffer | null>(null)

export function offerUndo(said: string, undo: () => void): void {
  undoOffer.value = { said, undo }
}
