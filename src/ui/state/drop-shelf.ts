import type { Store } from '../../storage/open-store.ts'
import type { Removal } from '../../storage/removal.ts'
import { restoreRemoval } from './restore-removal.ts'
import { Shelf, type ShelfStore } from './shelf.ts'
import { offerUndo } from './undo.ts'

/** A store whose removals take along what hangs on the record. */
export interface DropShelfStore<T> extends Omit<ShelfStore<T>, 'remove'> {
  readonly remove: (store: Store<unknown>, id: string) => Promise<Removal>
}

/** A shelf whose records are removed with all that hangs on them, to be taken back together. */
export class DropShelf<T extends { readonly id: string }> extends Shelf<T> {
  readonly #removals: Map<string, Removal>

  constructor(functions: DropShelfStore<T>) {
    const removals = new Map<string, Removal>()
    super({
      ...functions,
      remove: async (store, id) => {
        removals.set(id, await functions.remove(store, id))
      },
    })
    this.#removals = removals
  }

  /** Removes the value and says so, offering to take it back. */
  drop(value: T, said: string): void {
    this.#removals.delete(value.id)
    this.remove(value.id)
    offerUndo(said, () => void this.#takeBack(value))
  }

  async #takeBack(value: T): Promise<void> {
    await this.written()
    const removal = this.#removals.get(value.id)
    if (removal) await restoreRemoval(removal)
    // The device has not taken the removal in: what hangs on the record is still there.
    else this.put(value)
  }
}
